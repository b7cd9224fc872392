// One verdict, three places: the rows of the arithmetic in the examination's JSON, in the evidence panel and
// on the findings sheet are the same and add up alike. Each is read as its reader reads it: the JSON as text,
// the panel through its table model, the sheet from its printed words, and from the PDF where pdftotext is
// installed.
#include <QProcess>
#include <QStandardPaths>
#include <cmath>

#include "core/exchange/examination_json.h"
#include "core/fleet/machine_desk.h"
#include "tests/fleet/small_site.h"
#include "ui/panels/evidence_model.h"
#include "ui/sheet/sheet_file.h"
#include "ui/sheet/sheet_painter.h"

namespace fettle::sheet_test {
namespace {

const std::string kTag = "A-RACE";  // inner race of driver DE spalled, three recordings

struct Row {
    std::string name;
    double dban = 0;
};

double sumBut(const std::vector<Row>& rows, std::size_t last) {
    double sum = 0;
    for (std::size_t i = 0; i + last < rows.size(); ++i)
        sum += rows[i].dban;
    return sum;
}

// Lines (with the mean last), search and weight, unrounded.
std::vector<Row> rowsOfJson(const std::string& text, const std::string& fault, const std::string& at) {
    std::vector<Row> rows;
    const Json examination = Json::parse(text);
    for (const Json& finding : examination["findings"]) {
        if (finding["fault"] != fault || finding["at"] != at) continue;
        for (const Json& line : finding["lines"])
            rows.push_back({line["name"], line["weight_dban"]});
        rows.push_back({"search", finding["search_dban"]});
        rows.push_back({"weight", finding["weight_dban"]});
    }
    return rows;
}

std::vector<Row> rowsOfPanel(const Hypothesis& hypothesis) {
    const Theme theme(ThemeChoice::Light);
    EvidenceModel model(theme, nullptr);
    model.setRows(arithmeticOf(hypothesis));
    std::vector<Row> rows;
    for (int i = 0; i < model.rowCount(); ++i) {
        const auto text = [&](int column) {
            return model.data(model.index(i, column), Qt::DisplayRole).toString();
        };
        rows.push_back({text(EvidenceModel::Name).toStdString(), text(EvidenceModel::Decibans).toDouble()});
    }
    return rows;
}

// The cell in the column of decibans on the line of a name; nothing where the name is not printed.
std::optional<double> dbanBeside(const SheetPage& page, const std::string& name) {
    double headRight = 0;
    for (const PlacedText& text : page.texts)
        if (text.text == QStringLiteral("decibans")) headRight = text.rect.right();
    for (const PlacedText& text : page.texts) {
        if (text.text.toStdString() != name) continue;
        for (const PlacedText& cell : page.texts)
            if (std::abs(cell.at.y() - text.at.y()) < 1 && std::abs(cell.rect.right() - headRight) < 60)
                return cell.text.toDouble();
    }
    return std::nullopt;
}

// The page that has the table.
SheetPage tablePage(const SheetData& sheet) {
    const auto pages = SheetPainter(sheet, PaperSize::A4).pages();
    for (const SheetPage& page : pages)
        for (const PlacedText& text : page.texts)
            if (text.text == QStringLiteral("decibans")) return page;
    ADD_FAILURE() << "no page has the table of lines";
    return pages.front();
}

class ThreeWays : public fleet_test::SmallSite {
  protected:
    void SetUp() override {
        SmallSite::SetUp();
        const KeptRound round = opened();
        auto kept = fleet_->rounds().examinationJson(round.entry.id, kTag);
        ASSERT_TRUE(kept);
        json_ = *kept;
        auto sheet = readSheet(*fleet_, {kTag, 1, {}});
        ASSERT_TRUE(sheet) << sheet.error().sentence();
        sheet_ = std::move(*sheet);
        auto examination = examinationFromText(json_, path_);
        ASSERT_TRUE(examination);
        for (const Hypothesis& h : examination->findings)
            if (h.fault == sheet_.content.fault && h.at == sheet_.content.at) hypothesis_ = h;
        ASSERT_TRUE(hypothesis_.weightDban);
    }
    std::vector<Row> json() const { return rowsOfJson(json_, hypothesis_.fault, hypothesis_.at); }

    std::string json_;
    SheetData sheet_;
    Hypothesis hypothesis_;
};

TEST_F(ThreeWays, EachAddsUpToItsWeight) {
    const auto json = this->json(), panel = rowsOfPanel(hypothesis_);
    ASSERT_GT(json.size(), 4U);
    EXPECT_NEAR(sumBut(json, 1), json.back().dban, 1e-6);
    EXPECT_NEAR(sumBut(panel, 1), panel.back().dban, 1e-9);
    EXPECT_NEAR(panel.back().dban, json.back().dban, 0.05 + 1e-9);
    double sheet = 0;
    for (const ArithmeticRow& row : sheet_.content.rows)
        if (row.kind != ArithmeticRow::Kind::Weight) sheet += row.printed;
    EXPECT_NEAR(sheet, panel.back().dban, 1e-9);
}

// Search takes up the rounding of the others: half a tenth for each.
TEST_F(ThreeWays, ThePanelShowsTheRowsOfTheJson) {
    const auto json = this->json(), panel = rowsOfPanel(hypothesis_);
    ASSERT_EQ(json.size(), panel.size());
    for (const Row& row : json) {
        const auto same =
            std::find_if(panel.begin(), panel.end(), [&](const Row& p) { return p.name == row.name; });
        ASSERT_NE(same, panel.end()) << row.name;
        EXPECT_NEAR(same->dban, row.dban, row.name == "search" ? 0.05 * double(json.size()) : 0.05 + 1e-9)
            << row.name;
    }
}

TEST_F(ThreeWays, TheSheetPrintsTheRowsOfThePanel) {
    const SheetPage page = tablePage(sheet_);
    std::vector<Row> notPrinted;
    for (const Row& row : rowsOfPanel(hypothesis_)) {
        const auto printed = dbanBeside(page, row.name);
        if (!printed)
            notPrinted.push_back(row);
        else
            EXPECT_EQ(*printed, row.dban) << row.name;
    }
    if (notPrinted.empty()) return;
    const auto rest = dbanBeside(page, std::to_string(notPrinted.size()) + " more lines, in the JSON twin");
    ASSERT_TRUE(rest);
    EXPECT_NEAR(*rest, sumBut(notPrinted, 0), 1e-9);
}

TEST_F(ThreeWays, TheTwinOfTheSheetHasTheSameRows) {
    const auto panel = rowsOfPanel(hypothesis_);
    const Json twin = toJson(sheet_.content);
    ASSERT_EQ(twin["lines"].size(), panel.size());
    for (std::size_t i = 0; i < panel.size(); ++i) {
        EXPECT_EQ(twin["lines"][i]["name"], panel[i].name);
        EXPECT_NEAR(twin["lines"][i]["printed_dban"].get<double>(), panel[i].dban, 1e-9);
    }
}

QString textOfPdf(const SheetData& sheet, const std::string& path) {
    RealFileSystem files;
    if (!writeSheet(sheet, path, PaperSize::A4, files)) return {};
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"),
                 {QStringLiteral("-layout"), QString::fromStdString(path), QStringLiteral("-")});
    return reader.waitForFinished() ? QString::fromUtf8(reader.readAllStandardOutput()) : QString();
}

TEST_F(ThreeWays, ThePdfSaysThemToo) {
    if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty())
        GTEST_SKIP() << "pdftotext is not installed; the printed words are checked above";
    const QString text = textOfPdf(sheet_, folder_ / "sheet.pdf");
    const SheetPage page = tablePage(sheet_);
    int looked = 0;
    for (const Row& row : rowsOfPanel(hypothesis_)) {
        if (!dbanBeside(page, row.name)) continue;
        const QString name = QRegularExpression::escape(QString::fromStdString(row.name));
        const QString dban = QRegularExpression::escape(QString::number(row.dban, 'f', 1));
        EXPECT_TRUE(text.contains(
            QRegularExpression(name + QStringLiteral("[^\\n]* ") + dban + QStringLiteral("\\s*\\n"))))
            << row.name << " " << row.dban;
        ++looked;
    }
    EXPECT_GT(looked, 4);
    EXPECT_TRUE(text.contains(QStringLiteral("fitter"))) << "joined letters would not be found by a search";
}

}  // namespace
}  // namespace fettle::sheet_test
