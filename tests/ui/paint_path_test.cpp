// Paint never computes: while the whole machine page is painted again and again, in every tab, zoomed and
// shifted, no transform runs, no question goes to the fleet file and nothing is read from a file. Counted
// over the whole program: transforms in core/dsp/fft, statements in core/store, reads by the system's own
// count of this process.
#include <QComboBox>
#include <QFile>
#include <QTabWidget>
#include <QWheelEvent>
#include <optional>

#include "core/dsp/fft_count.h"
#include "core/store/statement_count.h"
#include "tests/fleet/small_site.h"
#include "tests/ui/plot_support.h"
#include "ui/pages/machine_page.h"
#include "ui/plot/plot_frame.h"

namespace fettle {

namespace {

// Calls of read by this process so far; nothing where the system does not tell.
std::optional<long long> readsSoFar() {
    QFile file(QStringLiteral("/proc/self/io"));
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    for (const QByteArray& line : file.readAll().split('\n'))
        if (line.startsWith("syscr: ")) return line.mid(7).toLongLong();
    return std::nullopt;
}

struct Counts {
    std::uint64_t transforms = transformsRun(), statements = statementsStepped();
};

class PaintPath : public fleet_test::SmallSite {
  protected:
    void openPage(QSize size) {
        work_ = std::make_unique<FleetWork>(path_);
        page_ = std::make_unique<MachinePage>(*work_, selection_, theme_);
        page_->resize(size);
        page_->show();
        selection_.setMachine("A-RACE");
        for (int quiet = 0; quiet < 3;) {
            ASSERT_TRUE(QTest::qWaitFor([this] { return work_->waiting() == 0; }, 60000));
            test::settle();
            quiet = work_->waiting() == 0 ? quiet + 1 : 0;
        }
    }
    void TearDown() override { page_.reset(); }
    static void wheel(QWidget& canvas, int turned) {
        const QPointF middle = canvas.rect().center();
        QWheelEvent event(middle, canvas.mapToGlobal(middle), {}, {0, turned}, Qt::NoButton, {},
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(&canvas, &event);
    }
    // Every plot zoomed, shifted and painted, then the page as a whole. Returns how many plots were seen.
    int paintAll() {
        int plots = 0;
        for (PlotFrame* plot : page_->findChildren<PlotFrame*>()) {
            if (!plot->isVisible()) continue;
            ++plots;
            for (const int turned : {120, 120, -120, -120}) {
                wheel(*plot->canvas(), turned);
                plot->canvas()->repaint();
            }
            plot->repaint();
        }
        EXPECT_FALSE(page_->grab().isNull());
        return plots;
    }
    void paintEveryTab() {
        for (QTabWidget* tabs : page_->findChildren<QTabWidget*>())
            for (int i = 0; tabs->isVisible() && i < tabs->count(); ++i) {
                tabs->setCurrentIndex(i);
                page_->repaint();
                paintAll();
            }
    }

    Theme theme_{ThemeChoice::Light};
    Selection selection_;
    std::unique_ptr<FleetWork> work_;
    std::unique_ptr<MachinePage> page_;
};

TEST_F(PaintPath, TheCountersCountWhatTheyWatch) {
    const Counts before;
    openPage({1280, 760});
    const Counts after;
    EXPECT_GT(after.transforms, before.transforms);  // spectra of the recording, on a worker
    EXPECT_GT(after.statements, before.statements);
    const auto first = readsSoFar(), second = readsSoFar();
    if (first && second) {
        EXPECT_GT(*second, *first);  // reading the count is a read
    }
}

TEST_F(PaintPath, NoTransformNoQuestionNoFileWhileTheMachinePageIsPainted) {
    openPage({1280, 760});
    paintEveryTab();  // letters are made at their first use
    const Counts before;
    for (int i = 0; i < 3; ++i)
        EXPECT_GE(paintAll(), 2);  // of some tabs none is a plot
    paintEveryTab();
    const Counts after;
    EXPECT_EQ(after.transforms, before.transforms);
    EXPECT_EQ(after.statements, before.statements);
}

TEST_F(PaintPath, NothingIsReadWhilePainting) {
    openPage({1280, 760});
    paintAll();
    const auto first = readsSoFar(), second = readsSoFar();
    if (!first || !second) GTEST_SKIP() << "the system does not count this process's reads";
    paintAll();
    const auto third = readsSoFar();
    EXPECT_EQ(*third - *second, *second - *first);  // reading the count itself and nothing else
}

TEST_F(PaintPath, WideAndDarkAreNoExceptions) {
    openPage({2400, 1100});
    theme_.choose(ThemeChoice::Dark);
    test::settle();
    paintAll();
    const Counts before;
    EXPECT_GE(paintAll(), 4);
    const Counts after;
    EXPECT_EQ(after.transforms, before.transforms);
    EXPECT_EQ(after.statements, before.statements);
}

}  // namespace
}  // namespace fettle
