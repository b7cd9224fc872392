#include "ui/sheet/sheet_figures.h"

#include <QCoreApplication>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/plot/spectrum_plot.h"
#include "ui/plot/trend_plot.h"
#include "ui/sheet/line_table.h"
#include "ui/sheet/plot_on_paper.h"
#include "ui/sheet/sheet_page.h"
#include "ui/sheet/trend_events.h"
#include "ui/sheet/trend_past_data.h"

namespace fettle {

namespace {

constexpr double kBeyondLastMark = 1.12;
constexpr int kNamesShare = 6;
constexpr double kHalfDayMs = 12 * 3600 * 1e3;

bool isVelocity(const SheetSpectrum& spectrum) {
    return spectrum.view.empty() || spectrum.view == "velocity";
}

const DetailSpectrum& spectrumIn(const RecordingDetail& detail, const SheetSpectrum& asked) {
    if (asked.view == "own") return detail.plain;
    const DetailSpectrum& wanted = isVelocity(asked) ? detail.velocity : detail.envelope;
    return wanted.values.empty() ? detail.plain : wanted;
}

constexpr float kLeastBelowDb = -80;

// In decibels relative to the highest line of the band.
void setBelowCarrier(const SheetSpectrum& asked, SpectrumData& data) {
    const auto bin = [&](double hz) {
        return std::min(data.values.size(), std::size_t(std::max(0.0, hz / data.dfHz)));
    };
    const auto from = data.values.begin() + long(bin(asked.fromHz)),
               to = data.values.begin() + long(bin(asked.toHz));
    const float carrier = from < to ? *std::max_element(from, to) : 0;
    if (carrier <= 0) return;
    for (float& value : data.values)
        value = std::max(kLeastBelowDb, 20 * std::log10(std::max(value, 1e-30F) / carrier));
    data.unit = QCoreApplication::translate("Sheet", "dB below the line");
    data.decibels = true;
    data.least = kLeastBelowDb;
}

// An envelope is shown over its floor: what lies below is chance.
std::shared_ptr<const SpectrumData> spectrumData(const RecordingDetail& detail, const SheetSpectrum& asked) {
    const DetailSpectrum& source = spectrumIn(detail, asked);
    auto data = std::make_shared<SpectrumData>();
    data->unit = QString::fromStdString(source.unit);
    data->decibels = source.unit.starts_with("dB");
    data->dfHz = source.dfHz;
    data->values = source.values;
    data->shaftHz = detail.shaftHz;
    if (asked.carrierHz > 0 && data->dfHz > 0) setBelowCarrier(asked, *data);
    return data;
}

std::vector<LineMark> marksOf(const SheetContent& sheet) {
    std::vector<LineMark> marks;
    for (const SheetMark& mark : sheet.spectrum.marks) {
        const int number = lineNumber(sheet.rows, mark.name);
        const QString name = number ? QString::number(number) : plainText(mark.name);
        const MarkKind kind = number == 0  ? MarkKind::Ordinary
                              : mark.found ? MarkKind::Found
                                           : MarkKind::Absent;
        marks.push_back({mark.hz, name, {}, kind, int(marks.size())});
    }
    return marks;
}

double topHz(const SheetSpectrum& spectrum, const SpectrumData& data) {
    if (spectrum.carrierHz > 0) return spectrum.toHz;
    double top = 0;
    for (const SheetMark& mark : spectrum.marks)
        top = std::max(top, mark.hz);
    const double all = data.dfHz * double(data.values.size());
    return top > 0 ? std::min(all, std::max(kBeyondLastMark * top, 20 * data.dfHz)) : all;
}

std::shared_ptr<const TrendData> trendData(const SheetTrend& trend) {
    auto data = std::make_shared<TrendData>();
    data->quantity = plainText(trend.title);
    data->unit = plainText(trend.unit);
    for (const DayValue& day : trend.days)
        data->samples.push_back({toMs(startOfDay(day.day)) + kHalfDayMs, day.value, 1, true});
    for (const SheetLimit& limit : trend.limits)  // "B/C 4.5 mm/s": the plot adds the value itself
        data->limits.push_back({plainText(limit.label).section(QLatin1Char(' '), 0, 0), limit.value});
    addPast(trend.past, *data);
    return data;
}

std::vector<TrendEvent> eventsOf(const SheetTrend& trend) {
    std::vector<TrendEvent> events;
    for (const PaperEvent& event : paperEvents(trend))
        events.push_back({event.ms, QString::number(events.size() + 1), {}});
    return events;
}

}  // namespace

struct SheetFigures::Parts {
    Theme paper{ThemeChoice::Paper};
    Selection selection;
    TimeAxis axis{selection};
    SpectrumPlot spectrum{paper, selection, QStringLiteral("sheetSpectrum"), {}, nullptr};
    TrendPlot trend{paper, axis, selection, nullptr};
    double fromHz = 0, topHz = 0;
    bool hasSpectrum = false;
};

SheetFigures::SheetFigures(const SheetData& sheet) : parts_(std::make_unique<Parts>()) {
    setPaperLabels(parts_->spectrum);
    setPaperLabels(parts_->trend);
    if (sheet.detail) {
        const auto data = spectrumData(*sheet.detail, sheet.content.spectrum);
        parts_->hasSpectrum = !data->values.empty() && data->dfHz > 0;
        parts_->spectrum.setData(data);
        parts_->spectrum.setMarks(marksOf(sheet.content));
        parts_->fromHz = sheet.content.spectrum.fromHz;
        parts_->topHz = topHz(sheet.content.spectrum, *data);
    }
    const SheetTrend& trend = sheet.content.trend;
    if (trend.days.empty()) return;
    // Free at the left: there the limits say their names.
    const int first = trend.days.front().day, last = trend.days.back().day + 1;
    const int named = std::max(1, (last - first) / kNamesShare);
    const auto& heading = trend.past.heading;
    const int ahead = heading ? std::clamp(*heading->date.median + named / 2, last, last + 2 * named) : last;
    parts_->axis.setBounds({startOfDay(first - named), startOfDay(ahead)});
    parts_->trend.setData(trendData(trend));
    parts_->trend.setEvents(eventsOf(trend));
}

SheetFigures::~SheetFigures() = default;

bool SheetFigures::hasSpectrum() const {
    return parts_->hasSpectrum;
}

void SheetFigures::drawSpectrum(QPainter& painter, const QRectF& rect) {
    prepareOnPaper(parts_->spectrum, painter, rect);
    parts_->spectrum.showHz(parts_->fromHz, parts_->topHz);
    drawOnPaper(parts_->spectrum, painter, rect);
}

void SheetFigures::drawTrend(QPainter& painter, const QRectF& rect) {
    drawOnPaper(parts_->trend, painter, rect);
}

}  // namespace fettle
