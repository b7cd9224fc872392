// The resonance map in the window: its grid, its bands, its words where there is no map. What the map finds
// is tested in tests/trend and, on a simulated sweep, in tests/fleet.
#include "ui/dialogs/resonance_dialog.h"

#include <QComboBox>
#include <QLabel>
#include <QTableWidget>
#include <QToolButton>

#include "tests/ui/desk_fixture.h"

namespace fettle::desk_test {
namespace {

// Eight speeds, a line at order 3, strongest where it meets 60 Hz at 1200 r/min.
MachineResonance found() {
    std::vector<SpeedSpectrum> spectra;
    for (int bin = 0; bin < 8; ++bin)
        for (int k = 0; k < 16; ++k) {
            const double rpm = 1055 + 40 * bin;
            SpeedSpectrum one{rpm, 1000, std::vector<float>(800, 0.001F)};
            one.lines[std::size_t(3 * rpm / 60 / 1.25)] = float(1 / (1 + std::pow((rpm - 1200) / 40, 2)));
            spectra.push_back(std::move(one));
        }
    MachineResonance all;
    all.machine = std::make_shared<const Machine>();
    all.map = resonanceMap({{"M-DE x", spectra}});
    return all;
}

TEST(ResonanceData, IsTheGridWithItsMarks) {
    const MachineResonance all = found();
    ASSERT_EQ(all.map.lacking, "");
    ASSERT_EQ(all.map.bands.size(), 1u);
    const auto data = resonanceData(all, 0, true);
    EXPECT_EQ(data->hz->rows(), all.map.channels[0].bins.size());
    EXPECT_EQ(data->hz->lines(), 800u);
    EXPECT_EQ(data->hz->recording(0), int(all.map.channels[0].bins[0].count));
    EXPECT_TRUE(data->orders->options().orders);
    ASSERT_EQ(data->marks.size(), 1u);
    EXPECT_NEAR(data->marks[0].hz, 60, 2);
    EXPECT_EQ(data->marks[0].order, 3);
    EXPECT_LT(data->marks[0].fromRpm, 1200);
    EXPECT_GT(data->marks[0].toRpm, 1200);
}

TEST(ResonancePlotted, DrawsInHertzAndInOrdersAndGivesItsTable) {
    Theme theme(ThemeChoice::Light);
    ResonancePlot plot(theme, {}, nullptr);
    plot.resize(800, 400);
    plot.setData(resonanceData(found(), 0, false));
    plot.show();
    const QImage hertz = plot.grab().toImage();
    plot.choose(0);
    EXPECT_NE(plot.grab().toImage(), hertz);  // the chosen one is seen
    auto* orders = plot.findChild<QToolButton*>(QStringLiteral("resonanceOrders"));
    orders->click();
    EXPECT_NE(plot.grab().toImage(), hertz);
    const QString table = plot.tableText(TableExtent::All);
    EXPECT_EQ(table.count(QStringLiteral("\n")),
              table.count(QStringLiteral("#")) + 1 + int(found().map.channels[0].bins.size()));
}

class ResonanceOnDesk : public Desk {};

TEST_F(ResonanceOnDesk, AMachineAtOneSpeedIsToldWhatItTakes) {
    openWindow({QStringLiteral("machine"), QStringLiteral("B-SOUND"), {}, {}, {}, {}});
    part<QAction>("machine.resonance")->trigger();
    auto* map = dialog<ResonanceDialog>("resonanceDialog");
    ASSERT_NE(map, nullptr);
    settle();
    ASSERT_NE(map->found(), nullptr);
    auto* plot = map->findChild<ResonancePlot*>(QStringLiteral("resonancePlot"));
    EXPECT_TRUE(plot->words().contains(QStringLiteral("not enough speeds: 3 recordings")))
        << plot->words().toStdString();
    EXPECT_TRUE(plot->words().contains(QStringLiteral("runs on the mains")));
    EXPECT_FALSE(map->findChild<QTableWidget*>(QStringLiteral("resonanceBands"))->isVisible());
}

TEST_F(ResonanceOnDesk, OpensByItsNameToo) {
    openWindow({QStringLiteral("machine"), QStringLiteral("A-RACE"), {}, {}, {}, {}});
    window_->workplace()->showDialog(QStringLiteral("resonance"));
    EXPECT_NE(dialog<ResonanceDialog>("resonanceDialog"), nullptr);
    settle();
}

}  // namespace
}  // namespace fettle::desk_test
