// How long the waterfall takes to paint, and what it shows, against the plain Qwt spectrogram over the same
// cells, in turns, best of each. Canvas 1600 x 900. Seeded: 100 lines one bin wide, 500 single-cell peaks.
//   build/fettle-bench --benchmark_filter=Waterfall
// own_*: this program's item; qwt_*: QwtPlotSpectrogram over QwtMatrixRasterData, nearest cell, RGB.
// full_ms: everything; zoom_ms: a tenth of rows and lines; pan_ms: nine tenths of them, shifted by a pixel a
// frame. lines, peaks: how many are to be seen when all is shown. 26,280 rows: a year at 20 minutes.
#include <benchmark/benchmark.h>
#include <qwt_color_map.h>
#include <qwt_interval.h>
#include <qwt_matrix_raster_data.h>
#include <qwt_plot.h>
#include <qwt_plot_canvas.h>
#include <qwt_plot_layout.h>
#include <qwt_plot_spectrogram.h>
#include <qwt_scale_map.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <algorithm>
#include <limits>
#include <random>

#include "tests/bench/stopwatch.h"
#include "ui/plot/waterfall_item.h"

namespace fettle::bench {

namespace {

constexpr int kWidth = 1600, kHeight = 900, kLines = 100, kPeaks = 500;
constexpr double kTopHz = 1000, kDayMs = 24 * 3600 * 1e3;

struct Seeded {
    std::size_t rows = 0, lines = 0;
    std::vector<WaterfallRow> spectra;
    std::vector<std::size_t> lineAt;
    std::vector<std::pair<std::size_t, std::size_t>> peakAt;
};

Seeded seeded(std::size_t rows, std::size_t lines) {
    Seeded s{rows, lines, {}, {}, {}};
    std::mt19937 random(1);
    s.spectra.resize(rows);
    for (std::size_t i = 0; i < rows; ++i) {
        s.spectra[i] = {double(i) * kDayMs, std::int64_t(i), kTopHz, 0, {}};
        s.spectra[i].lines.resize(lines);
        for (float& cell : s.spectra[i].lines)
            cell = 0.001F + 0.009F * float(random() % 1000) / 1000;
    }
    for (int i = 0; i < kLines; ++i) {
        s.lineAt.push_back(random() % lines);
        for (WaterfallRow& row : s.spectra)
            row.lines[s.lineAt.back()] = 1;
    }
    for (int i = 0; i < kPeaks; ++i) {
        s.peakAt.emplace_back(random() % rows, random() % lines);
        s.spectra[s.peakAt.back().first].lines[s.peakAt.back().second] = 1;
    }
    return s;
}

// A plot of the given item alone, on a canvas of exactly kWidth x kHeight.
class Bare {
  public:
    Bare(QwtPlotItem* item, const Seeded& s, QRgb strongest) : seeded_(s), strongest_(strongest) {
        auto* canvas = new QwtPlotCanvas;
        canvas->setFrameStyle(QFrame::NoFrame);
        plot_.setCanvas(canvas);
        plot_.plotLayout()->setCanvasMargin(0);
        plot_.setAxisVisible(QwtPlot::xBottom, false);
        plot_.setAxisVisible(QwtPlot::yLeft, false);
        item->attach(&plot_);
        plot_.resize(kWidth, kHeight);
        plot_.show();
        show(1);
    }
    void show(double share, int shiftedPx = 0) {
        const double days = double(seeded_.rows) * kDayMs, shift = days * share / kWidth * shiftedPx;
        plot_.setAxisScale(QwtPlot::xBottom, -kDayMs / 2 + days * (1 - share) / 2 + shift,
                           -kDayMs / 2 + days * (1 + share) / 2 + shift);
        plot_.setAxisScale(QwtPlot::yLeft, kTopHz * (1 - share) / 2, kTopHz * (1 + share) / 2);
        plot_.updateAxes();
    }
    // All items into an image, as a repaint of the canvas does.
    double paintMs() {
        QPainter painter(&image_);
        return onceMs([&] { plot_.drawCanvas(&painter); });
    }
    int peaksSeen() {
        const QImage image = picture();
        return int(std::count_if(seeded_.peakAt.begin(), seeded_.peakAt.end(),
                                 [&](const auto& at) { return strongAt(image, at.first, at.second); }));
    }
    // Seen where it runs through: at 40 moments of 40.
    int linesSeen() {
        const QImage image = picture();
        return int(std::count_if(seeded_.lineAt.begin(), seeded_.lineAt.end(), [&](std::size_t line) {
            for (std::size_t k = 0; k < 40; ++k)
                if (!strongAt(image, k * (seeded_.rows - 1) / 39, line)) return false;
            return true;
        }));
    }

  private:
    QImage picture() {
        show(1);
        paintMs();
        return image_;
    }
    bool strongAt(const QImage& image, std::size_t row, std::size_t line) const {
        const double x = plot_.canvasMap(QwtPlot::xBottom).transform(double(row) * kDayMs);
        const double up = (double(line) + 0.5) * kTopHz / double(seeded_.lines);
        const double y = plot_.canvasMap(QwtPlot::yLeft).transform(up);
        for (int dy = -1; dy <= 1; ++dy)
            for (int dx = -1; dx <= 1; ++dx) {
                const QPoint at(int(x) + dx, int(y) + dy);
                if (image.rect().contains(at) && image.pixel(at) == strongest_) return true;
            }
        return false;
    }

    const Seeded& seeded_;
    QRgb strongest_;
    QImage image_{kWidth, kHeight, QImage::Format_RGB32};
    QwtPlot plot_;
};

QwtPlotItem* ownItem(const Seeded& s) {
    auto* item = new WaterfallItem;
    item->setCachePolicy(QwtPlotRasterItem::NoCache);
    item->setData(WaterfallData::make(s.spectra, {}));
    item->setScale(std::make_shared<ColourScale>(ColourRange{0.001, 1}, blueToYellow(), qRgb(0, 0, 0)));
    return item;
}

QwtPlotItem* qwtItem(const Seeded& s) {
    QVector<double> cells;
    cells.reserve(qsizetype(s.rows * s.lines));
    for (std::size_t line = 0; line < s.lines; ++line)
        for (const WaterfallRow& row : s.spectra)
            cells.append(double(row.lines[line]));
    auto* matrix = new QwtMatrixRasterData;
    matrix->setValueMatrix(cells, int(s.rows));
    matrix->setInterval(Qt::XAxis, QwtInterval(-kDayMs / 2, (double(s.rows) - 0.5) * kDayMs));
    matrix->setInterval(Qt::YAxis, QwtInterval(0, kTopHz));
    matrix->setInterval(Qt::ZAxis, QwtInterval(0, 1));
    auto* item = new QwtPlotSpectrogram;
    item->setData(matrix);
    item->setColorMap(new QwtLinearColorMap(Qt::black, Qt::white));
    item->setRenderThreadCount(1);
    item->setCachePolicy(QwtPlotRasterItem::NoCache);
    return item;
}

void makeApplication() {
    if (qApp) return;
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    static int count = 1;
    static char name[] = "fettle-bench";
    static char* arguments[] = {name, nullptr};
    static QApplication application(count, arguments);
}

void waterfallPaint(benchmark::State& state) {
    makeApplication();
    const Seeded s = seeded(std::size_t(state.range(0)), std::size_t(state.range(1)));
    Bare own(ownItem(s), s, blueToYellow().back()), qwt(qwtItem(s), s, qRgb(255, 255, 255));
    constexpr double shares[] = {1, 0.1, 0.9};
    double best[2][3];
    std::fill_n(&best[0][0], 6, std::numeric_limits<double>::infinity());
    int frame = 0;
    for (auto _ : state)
        for (const int zoom : {0, 1, 2}) {
            const int shifted = zoom == 2 ? ++frame : 0;
            own.show(shares[zoom], shifted);
            qwt.show(shares[zoom], shifted);
            best[0][zoom] = std::min(best[0][zoom], own.paintMs());
            best[1][zoom] = std::min(best[1][zoom], qwt.paintMs());
        }
    state.counters["own_full_ms"] = best[0][0];
    state.counters["own_zoom_ms"] = best[0][1];
    state.counters["own_pan_ms"] = best[0][2];
    state.counters["qwt_full_ms"] = best[1][0];
    state.counters["qwt_zoom_ms"] = best[1][1];
    state.counters["qwt_pan_ms"] = best[1][2];
    state.counters["own_lines"] = own.linesSeen();
    state.counters["qwt_lines"] = qwt.linesSeen();
    state.counters["own_peaks"] = own.peaksSeen();
    state.counters["qwt_peaks"] = qwt.peaksSeen();
}
BENCHMARK(waterfallPaint)
    ->Name("Waterfall")
    ->ArgNames({"rows", "lines"})
    ->Args({10'000, 800})
    ->Args({2'000, 3'200})
    ->Args({26'280, 800})
    ->Iterations(20)
    ->Unit(benchmark::kMillisecond);

}  // namespace

}  // namespace fettle::bench
