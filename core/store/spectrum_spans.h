// Why: a year of a waterfall is 26,280 spectra and a screen is 1,600 pixels wide: the largest of every line
// over spans of four hours and of a day is kept beside the spectra, so that the whole is read at once and no
// peak of a single spectrum is lost, also where single spectra are thinned later. Kept up in the transaction
// that puts spectra in. A span counts what went in: where as many spectra are kept it is exact, and is made
// anew when one of them is replaced; where some were thinned it is only ever raised. Units: bytes of
// spectrum_codec.h; spans begin at whole multiples of their length since 1970 (UTC). Series of a file from
// before the spans wait (table spans_to_build): they are built when they are next written, or by `build`, and
// are read from the spectra until then. Thread: as the Database.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "core/base/progress.h"
#include "core/store/database.h"

namespace fettle {

inline constexpr std::chrono::milliseconds kSpanLengths[] = {std::chrono::hours(4), std::chrono::hours(24)};
inline constexpr int kSpanLevels = 2;  // numbered from 1
inline std::chrono::milliseconds spanLength(int level) {
    return kSpanLengths[level - 1];
}
Instant spanStart(Instant time, int level);

// The larger of every line; where one has fewer lines, each of them counts for all it covers.
void raiseLines(std::string& lines, std::string_view by);

struct SpectrumSeries {
    std::int64_t channel = 0;
    int kind = 0;
    auto operator<=>(const SpectrumSeries&) const = default;
};

struct SpannedSpectrum {
    std::int64_t recording = 0;
    Instant time{};
    double topHz = 0;
    std::string_view lines;
};

struct QuantisedSpan {
    Instant start{};
    double topHz = 0;
    std::int64_t spectra = 0, loudest = 0;
    Instant at{};
    std::string lines;
};

class SpectrumSpans {
  public:
    explicit SpectrumSpans(Database& database) : database_(database) {}

    // What the transaction did to the spectra; `flush` after the last of them takes it over.
    void added(SpectrumSeries series, const SpannedSpectrum& spectrum);
    void removed(SpectrumSeries series, Instant time);
    Status flush();

    // Those that begin within [from, until], in order of time.
    Result<std::vector<QuantisedSpan>> read(SpectrumSeries series, int level, Instant from, Instant until);

    Result<bool> waits(SpectrumSeries series);  // to be built
    Status build(SpectrumSeries series);        // from the spectra, within the caller's transaction
    Result<std::vector<SpectrumSeries>> waiting();

  private:
    struct Key {
        SpectrumSeries series;
        int level = 1;
        Instant start{};
        auto operator<=>(const Key&) const = default;
    };
    struct Raised {
        std::string lines;
        std::int64_t spectra = 0, loudest = 0;
        Instant at{};
        void raise(const Raised& by);  // all but the count
    };
    using ByTop = std::map<double, Raised>;
    struct Change {
        ByTop added;
        std::int64_t removed = 0;
    };

    static void add(ByTop& span, const SpannedSpectrum& spectrum);
    Status apply(const Key& key, Change& change);
    Status raise(const Key& key, const ByTop& by);
    Status write(const Key& key, const ByTop& span);
    Status remake(const Key& key, const ByTop& span);
    Result<std::int64_t> counted(const Key& key);
    Result<ByTop> kept(const Key& key);
    // The spectra in order of time, as spans of one level; `take` gets each.
    using Take = std::function<Status(Instant start, const ByTop& span)>;
    Status gather(SpectrumSeries series, int level, Instant from, Instant until, const Take& take);

    Database& database_;
    std::map<Key, Change> changes_;
};

}  // namespace fettle
