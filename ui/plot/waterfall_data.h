// Why: all spectra of one channel as one immutable grid that any zoom is drawn from exactly: a pixel is the
// maximum of every cell below it, so a line one bin wide and a peak in a single spectrum survive. Made off
// the window's thread, shared by pointer. Rows are spectra in order of time, lines run upwards from 0 to
// `top()` (Hz, or orders where asked for); a spectrum that ends lower leaves a gap above. Coarser levels hold
// the maximum of four rows of the one before. Values linear and not negative; kGap where there is none.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ui/plot/colour_scale.h"
#include "ui/plot/time_cover.h"

namespace fettle {

struct WaterfallRow {
    double ms = 0;
    std::int64_t recording = 0;
    double topHz = 0;    // line i of `lines` covers [i, i + 1) x topHz / lines.size()
    double shaftHz = 0;  // 0: not known
    std::vector<float> lines;
    std::optional<Cover> span = {};  // the largest of all within; not set: one spectrum
};

struct WaterfallOptions {
    bool orders = false;     // upright axis in orders of each row's own shaft; rows without speed are gaps
    std::string unit;        // "mm/s r.m.s.", said on legend and readout
    bool decibels = false;   // values are amplitude ratios, said in dB
    double coarseHours = 0;  // spans of so many hours stand for spectra that may follow; 0: all are here
    // Until then spans of so many hours: single spectra are no longer kept; 0: none.
    double thinnedUntilMs = 0, thinnedHours = 0;
};

class WaterfallData {
  public:
    static constexpr float kGap = -1;
    static std::shared_ptr<const WaterfallData> make(std::vector<WaterfallRow> rows,
                                                     const WaterfallOptions& options);

    std::size_t rows() const { return times_.size(); }
    std::size_t lines() const { return lines_; }
    double top() const { return top_; }
    const WaterfallOptions& options() const { return options_; }
    double ms(std::size_t row) const { return times_[row]; }
    std::int64_t recording(std::size_t row) const { return recordings_[row]; }
    double shaftHz(std::size_t row) const { return shafts_[row]; }
    const Cover& cover(std::size_t row) const { return covers_[row]; }
    float cell(std::size_t row, std::size_t line) const { return levels_[0][row * lines_ + line]; }

    // Rows whose cover meets [fromMs, untilMs); lines that meet [from, until) of the upright axis.
    struct Part {
        std::size_t first = 0, last = 0;  // [first, last)
        bool operator==(const Part&) const = default;
    };
    Part rowsWithin(double fromMs, double untilMs) const;
    Part linesWithin(double from, double until) const;
    std::optional<std::size_t> nearestRow(double ms) const;

    // out[k] = largest cell of line lines.first + k over the rows.
    void maxOver(Part rows, Part lines, float* out) const;

    struct Cell {
        std::size_t row = 0, line = 0;
        float value = kGap;
    };
    std::optional<Cell> peakWithin(Part rows, Part lines) const;  // nothing where all is gap

    // Between two shares of its cells in order of strength; the ends are at least ten times apart.
    ColourRange rangeAt(double lowShare, double highShare) const;
    ColourRange usualRange() const { return rangeAt(kLowShare, kHighShare); }
    static constexpr double kLowShare = 0.20, kHighShare = 0.9995;
    bool coarse() const { return options_.coarseHours > 0; }

  private:
    WaterfallData() = default;
    void cover(const std::vector<WaterfallRow>& rows);
    void fill(const std::vector<WaterfallRow>& rows);
    void buildLevels();
    void takeSample();

    WaterfallOptions options_;
    std::size_t lines_ = 0;
    double top_ = 0;
    std::vector<double> times_, shafts_;
    std::vector<std::int64_t> recordings_;
    std::vector<Cover> covers_;
    std::vector<std::vector<float>> levels_;  // [0]: rows x lines
    std::vector<float> sample_;               // some of the cells, weakest first
};

}  // namespace fettle
