#include "tests/bench/desk_bench.h"

#include <fmt/format.h>
#include <qwt_plot.h>

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QElapsedTimer>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QThread>
#include <QWheelEvent>
#include <algorithm>
#include <functional>
#include <optional>
#include <vector>

#include "tests/bench/large_fleet.h"
#include "tests/bench/peak_memory.h"
#include "ui/panels/evidence_panel.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waterfall.h"
#include "ui/window/main_window.h"
#include "ui/window/workplace.h"

namespace fettle::bench {

namespace {

constexpr qint64 kPatienceMs = 120'000;

class Figures {
  public:
    void add(double ms) { all_.push_back(ms); }
    void print(const char* what) {
        if (all_.empty()) return;
        std::sort(all_.begin(), all_.end());
        fmt::print("{:<58} {:>9.1f} {:>9.1f} {:>6}\n", what, all_[all_.size() / 2], all_.back(), all_.size());
    }

  private:
    std::vector<double> all_;
};

class DeskBench {
  public:
    explicit DeskBench(const DeskBenchOptions& options)
        : options_(options), theme_(ThemeChoice::Light), window_(theme_, 1.0, nullptr) {}

    int run() {
        window_.resize(options_.width, options_.height);
        window_.show();
        Figures opening;
        opening.add(msUntil([&] { window_.openFleet(QString::fromStdString(options_.fleet), {}); },
                            [&] { return window_.workplace() && window_.settled(); }));
        if (!window_.trouble().isEmpty()) {
            fmt::print(stderr, "{}\n", window_.trouble().toStdString());
            return 3;
        }
        fmt::print("{:<58} {:>9} {:>9} {:>6}\n", "milliseconds by the clock", "median", "most", "of");
        opening.print("fleet opened, round shown and read");
        pages();
        ledger();
        frames();
        fmt::print("memory at most: {:.0f} MB\n", peakMegabytes());
        return 0;
    }

  private:
    template <class T>
    T* part(const char* name) {
        return window_.findChild<T*>(QString::fromLatin1(name));
    }
    Workplace& place() { return *window_.workplace(); }
    static void paint() {
        for (int i = 0; i < 3; ++i)
            QApplication::processEvents(QEventLoop::AllEvents, 5);
    }
    // From `ask` until `there`, painted.
    static double msUntil(const std::function<void()>& ask, const std::function<bool()>& there) {
        QElapsedTimer clock;
        clock.start();
        ask();
        QApplication::processEvents();
        while (!there() && clock.elapsed() < kPatienceMs)
            QApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
        QApplication::processEvents();
        return double(clock.nsecsElapsed()) / 1e6;
    }
    bool historyShown() {
        const auto* waterfall = part<Waterfall>("waterfall");
        const auto* trend = part<TrendPlot>("trend");
        return waterfall->data() && waterfall->data()->rows() > 0 && trend->data() &&
               !trend->data()->samples.empty() && waterfall->words().isEmpty() && trend->words().isEmpty();
    }

    bool findingsShown() {
        const auto* panel = part<EvidencePanel>("evidencePanel");
        return panel->content() && !part<QLabel>("verdict")->text().isEmpty();
    }

    // On the screen; with its history; with its week's findings; with everything.
    void change(const char* page, const char* tag, const char* words) {
        Figures shown, history, findings, all;
        for (int turn = 0; turn < options_.turns; ++turn) {
            PagePlace away;  // from somewhere else, each time
            away.page = QString::fromLatin1(page) == QStringLiteral("round") ? QStringLiteral("register")
                                                                             : QStringLiteral("round");
            if (away.page == QStringLiteral("register"))
                away.machine = QString::fromLatin1(kOtherTag);
            else
                away.machine = QStringLiteral("M-0007");
            msUntil([&] { place().go(away); }, [&] { return window_.settled(); });
            paint();
            PagePlace to;
            to.page = QString::fromLatin1(page);
            to.machine = QString::fromLatin1(tag);
            QElapsedTimer clock;
            clock.start();
            place().go(to);
            QApplication::processEvents();
            shown.add(double(clock.nsecsElapsed()) / 1e6);
            std::optional<double> drawn, weighed;
            const auto look = [&] {
                const double now = double(clock.nsecsElapsed()) / 1e6;
                if (!drawn && historyShown()) drawn = now;
                if (!weighed && findingsShown()) weighed = now;
                return window_.settled();
            };
            const double done = double(clock.nsecsElapsed()) / 1e6 + msUntil([] {}, look);
            all.add(done);
            if (to.page != QStringLiteral("machine")) continue;
            history.add(drawn.value_or(done));
            findings.add(weighed.value_or(done));
        }
        shown.print(fmt::format("{}: page on the screen", words).c_str());
        history.print(fmt::format("{}: waterfall and trend on the screen", words).c_str());
        findings.print(fmt::format("{}: the week's findings on the screen", words).c_str());
        all.print(fmt::format("{}: everything read and painted", words).c_str());
    }

    void pages() {
        change("machine", kYearTag, "to the machine of a year");
        change("machine", kOtherTag, "to a machine of 26 weeks");
        change("register", kOtherTag, "to the register");
        change("round", "", "to the round");
    }

    void ledger() {
        auto* view = part<QAbstractItemView>("ledger");
        auto* text = part<QLineEdit>("textFilter");
        if (!view || !text) return;
        Figures scroll, filter, sort;
        for (int i = 0; i < options_.frames; ++i)
            scroll.add(
                msUntil([&] { view->verticalScrollBar()->triggerAction(QScrollBar::SliderPageStepAdd); },
                        [] { return true; }));
        scroll.print("ledger: a page further");
        for (const char* words : {"M-00", "M-004", "", "fan 12", ""})
            filter.add(msUntil([&] { text->setText(QString::fromLatin1(words)); },
                               [&] { return window_.settled(); }));
        filter.print("ledger: filtered by text");
        if (auto* head = window_.findChild<QHeaderView*>(); head && view->model()) {
            for (int column = 0; column < view->model()->columnCount(); ++column)
                sort.add(msUntil([&] { view->model()->sort(column); }, [&] { return window_.settled(); }));
            sort.print("ledger: sorted by a column");
        }
    }

    void wheel(QWidget* canvas, int turned) {
        const QPointF at = canvas->rect().center();
        QWheelEvent event(at, canvas->mapToGlobal(at), {}, {0, turned}, Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(canvas, &event);
    }
    void drag(QWidget* canvas, int by) {
        const auto send = [&](QEvent::Type type, const QPointF& at, Qt::MouseButtons held) {
            QMouseEvent event(type, at, canvas->mapToGlobal(at), Qt::LeftButton, held, Qt::NoModifier);
            QApplication::sendEvent(canvas, &event);
        };
        const QPointF middle = canvas->rect().center();
        send(QEvent::MouseButtonPress, middle, Qt::LeftButton);
        Figures frame;
        for (int i = 1; i <= options_.frames; ++i)
            pan_.add(msUntil(
                [&] { send(QEvent::MouseMove, middle + QPointF((i + 1) * by + 12, 0), Qt::LeftButton); },
                [] { return true; }));
        send(QEvent::MouseButtonRelease, middle, Qt::NoButton);
    }

    void frames() {
        PagePlace to;
        to.page = QStringLiteral("machine");
        to.machine = QString::fromLatin1(kYearTag);
        msUntil([&] { place().go(to); }, [&] { return window_.settled(); });
        paint();
        auto* waterfall = part<Waterfall>("waterfall");
        fmt::print("waterfall of {} spectra of {} lines over its trend, canvas {} x {}\n",
                   waterfall->data()->rows(), waterfall->data()->lines(), waterfall->canvas()->width(),
                   waterfall->canvas()->height());
        Figures zoom;
        for (int i = 0; i < options_.frames; ++i)
            zoom.add(
                msUntil([&] { wheel(waterfall->canvas(), i % 20 < 10 ? 120 : -120); }, [] { return true; }));
        zoom.print("a frame of zooming, waterfall and trend");
        for (int i = 0; i < 3; ++i)
            wheel(waterfall->canvas(), 120);
        paint();
        drag(waterfall->canvas(), 2);
        drag(waterfall->canvas(), -2);
        pan_.print("a frame of shifting, waterfall and trend");
    }

    const DeskBenchOptions& options_;
    Theme theme_;
    MainWindow window_;
    Figures pan_;
};

}  // namespace

int deskBench(const DeskBenchOptions& options) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    int count = 1;
    char name[] = "fettle-bench";
    char* arguments[] = {name, nullptr};
    QApplication application(count, arguments);
    return DeskBench(options).run();
}

}  // namespace fettle::bench
