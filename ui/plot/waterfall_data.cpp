#include "ui/plot/waterfall_data.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr std::size_t kFactor = 4;
constexpr std::size_t kSampled = 200'000;  // cells looked at for the range
constexpr double kLeastRatio = 10;

// The vertical maximum is the inner loop of every picture: let the compiler use what the processor has.
#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && !defined(__SANITIZE_ADDRESS__)
__attribute__((target_clones("avx512f", "avx2", "default")))
#endif
void takeMax(float* out, const float* in, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i)
        out[i] = in[i] > out[i] ? in[i] : out[i];
}

double unitOf(const WaterfallRow& row, const WaterfallOptions& options) {
    if (!options.orders) return 1;
    return row.shaftHz > 0 ? 1 / row.shaftHz : 0;
}

// Lines of one row onto the common grid, by maximum.
void spread(const WaterfallRow& row, double rowTop, double top, float* out, std::size_t lines) {
    const double step = top / double(lines), own = rowTop / double(row.lines.size());
    for (std::size_t j = 0; j < lines; ++j) {
        const double low = double(j) * step / own, high = double(j + 1) * step / own;
        const auto first = std::size_t(low + 1e-6);
        if (first >= row.lines.size()) break;
        const auto last = std::clamp(std::size_t(std::ceil(high - 1e-6)), first + 1, row.lines.size());
        out[j] = *std::max_element(row.lines.begin() + std::ptrdiff_t(first),
                                   row.lines.begin() + std::ptrdiff_t(last));
    }
}

}  // namespace

std::shared_ptr<const WaterfallData> WaterfallData::make(std::vector<WaterfallRow> rows,
                                                         const WaterfallOptions& options) {
    std::erase_if(rows, [](const WaterfallRow& row) { return row.lines.empty() || !(row.topHz > 0); });
    std::stable_sort(rows.begin(), rows.end(),
                     [](const WaterfallRow& a, const WaterfallRow& b) { return a.ms < b.ms; });
    std::shared_ptr<WaterfallData> data(new WaterfallData);
    data->options_ = options;
    for (const WaterfallRow& row : rows) {
        data->top_ = std::max(data->top_, row.topHz * unitOf(row, options));
        data->lines_ = std::max(data->lines_, row.lines.size());
        data->times_.push_back(row.ms);
        data->shafts_.push_back(row.shaftHz);
        data->recordings_.push_back(row.recording);
    }
    data->cover(rows);
    data->fill(rows);
    data->buildLevels();
    data->takeSample();
    return data;
}

// A span covers itself at least; two neighbours part between them, outside their spans.
void WaterfallData::cover(const std::vector<WaterfallRow>& rows) {
    covers_ = coversOf(times_);
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (const auto& span = rows[i].span)
            covers_[i] = {std::min(covers_[i].from, span->from), std::max(covers_[i].until, span->until)};
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const double least = rows[i - 1].span ? rows[i - 1].span->until : times_[i - 1];
        const double most = rows[i].span ? rows[i].span->from : times_[i];
        if (covers_[i - 1].until > covers_[i].from && least <= most)
            covers_[i - 1].until = covers_[i].from = std::clamp((times_[i - 1] + times_[i]) / 2, least, most);
    }
}

void WaterfallData::fill(const std::vector<WaterfallRow>& rows) {
    levels_.assign(1, std::vector<float>(rows.size() * lines_, kGap));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const WaterfallRow& row = rows[i];
        const double rowTop = row.topHz * unitOf(row, options_);
        float* out = levels_[0].data() + i * lines_;
        if (rowTop == top_ && row.lines.size() == lines_)
            std::copy(row.lines.begin(), row.lines.end(), out);
        else if (rowTop > 0)
            spread(row, rowTop, top_, out, lines_);
    }
    for (float& cell : levels_[0])
        if (!(cell >= 0)) cell = kGap;
}

void WaterfallData::buildLevels() {
    for (std::size_t count = rows(); count > 2 * kFactor; count = levels_.back().size() / lines_) {
        const std::vector<float>& fine = levels_.back();
        const std::size_t coarse = count / kFactor;  // whole groups only; the rest is read from below
        std::vector<float> level(coarse * lines_, kGap);
        for (std::size_t i = 0; i < coarse * kFactor; ++i)
            takeMax(level.data() + i / kFactor * lines_, fine.data() + i * lines_, lines_);
        levels_.push_back(std::move(level));
    }
}

void WaterfallData::takeSample() {
    const std::vector<float>& cells = levels_[0];
    const std::size_t step = std::max<std::size_t>(1, cells.size() / kSampled) | 1;
    for (std::size_t i = 0; i < cells.size(); i += step)
        if (cells[i] > 0) sample_.push_back(cells[i]);
    std::sort(sample_.begin(), sample_.end());
}

ColourRange WaterfallData::rangeAt(double lowShare, double highShare) const {
    if (sample_.empty()) return {};
    const auto at = [&](double share) {
        return double(sample_[std::size_t(std::clamp(share, 0.0, 1.0) * double(sample_.size() - 1))]);
    };
    return {at(lowShare), std::max(at(highShare), at(lowShare) * kLeastRatio)};
}

WaterfallData::Part WaterfallData::rowsWithin(double fromMs, double untilMs) const {
    const auto first = std::partition_point(covers_.begin(), covers_.end(),
                                            [&](const Cover& c) { return c.until <= fromMs; });
    const auto last =
        std::partition_point(first, covers_.end(), [&](const Cover& c) { return c.from < untilMs; });
    return {std::size_t(first - covers_.begin()), std::size_t(last - covers_.begin())};
}

WaterfallData::Part WaterfallData::linesWithin(double from, double until) const {
    if (lines_ == 0 || !(top_ > 0) || until <= 0 || from >= top_) return {};
    const double step = top_ / double(lines_);
    const auto first = std::min(std::size_t(std::max(0.0, from / step + 1e-9)), lines_ - 1);
    const auto last = std::size_t(std::max(0.0, std::ceil(until / step - 1e-9)));
    return {first, std::clamp(last, first + 1, lines_)};
}

std::optional<std::size_t> WaterfallData::nearestRow(double ms) const {
    if (times_.empty()) return std::nullopt;
    const auto after = std::lower_bound(times_.begin(), times_.end(), ms);
    if (after == times_.begin()) return 0;
    if (after == times_.end()) return times_.size() - 1;
    const auto i = std::size_t(after - times_.begin());
    return ms - times_[i - 1] < times_[i] - ms ? i - 1 : i;
}

// As a segment tree would: at each level the ends that fill no whole group, the middle from the level above.
void WaterfallData::maxOver(Part rows, Part lines, float* out) const {
    const std::size_t count = lines.last - lines.first;
    std::fill_n(out, count, kGap);
    std::size_t first = rows.first, last = rows.last;
    for (std::size_t level = 0; first < last; ++level) {
        const auto take = [&](std::size_t row) {
            takeMax(out, levels_[level].data() + row * lines_ + lines.first, count);
        };
        const bool top = level + 1 == levels_.size();
        const std::size_t groups = top ? 0 : levels_[level + 1].size() / lines_;
        while (first < last &&
               (top || first % kFactor != 0 || first / kFactor >= groups || first + kFactor > last))
            take(first++);
        while (last > first && (last % kFactor != 0 || last / kFactor > groups))
            take(--last);
        first /= kFactor;
        last /= kFactor;
    }
}

std::optional<WaterfallData::Cell> WaterfallData::peakWithin(Part rows, Part lines) const {
    Cell best;
    for (std::size_t row = rows.first; row < rows.last; ++row)
        for (std::size_t line = lines.first; line < lines.last; ++line)
            if (cell(row, line) > best.value) best = {row, line, cell(row, line)};
    if (best.value < 0) return std::nullopt;
    return best;
}

}  // namespace fettle
