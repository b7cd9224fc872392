// The examination as a person reads it: printed rows add up, and no name can forge a line.
#include "core/exchange/examination_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/text.h"
#include "core/diagnosis/examine.h"
#include "tests/diagnosis/examined.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::vector<RecordingPtr> faulty(std::size_t count) {
    std::vector<RecordingPtr> all;
    for (std::size_t i = 0; i < count; ++i) {
        const auto setup = made::setupOf(made::motor(), 700 + i, 2);
        all.push_back(made::made(made::with(setup, "bearing_outer_race", "driver DE", 0.75)).recording);
    }
    return all;
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    for (const std::string_view line : split(text, '\n'))
        lines.emplace_back(line);
    return lines;
}

// The last number of a row of the table before its state, in tenths: what a reader would add up.
std::optional<long> tenthsIn(const std::string& line) {
    std::string cell = line.substr(0, line.find("  found"));
    cell = cell.substr(0, cell.find("  absent"));
    cell = cell.substr(0, cell.find("  left out"));
    const auto value = parseNumber(cell.substr(cell.rfind(' ') + 1));
    return value ? std::optional(std::lround(*value * 10)) : std::nullopt;
}

// Sums every table of the text; returns how many there were.
int expectSums(const std::string& text) {
    int tables = 0;
    long sum = 0;
    bool inside = false;
    for (const std::string& line : linesOf(text)) {
        if (line.find("rank p") != std::string::npos) {
            inside = true;
            sum = 0;
        } else if (inside && line.rfind("     weight ", 0) == 0) {
            EXPECT_EQ(tenthsIn(line), sum) << line;
            inside = false;
            ++tables;
        } else if (inside && line.find("-----") == std::string::npos) {
            const auto tenths = tenthsIn(line);
            EXPECT_TRUE(tenths) << line;
            sum += tenths.value_or(0);
        }
    }
    return tables;
}

TEST(ExaminationText, PrintedRowsAddUpToThePrintedWeight) {
    EXPECT_EQ(expectSums(asText(made::examinedTogether(made::motor(), faulty(1)))), 1);
    EXPECT_EQ(expectSums(asText(made::examinedTogether(made::motor(), faulty(3)))), 1);
}

TEST(ExaminationText, SaysTheVerdictFirstAndTheCautionLast) {
    const std::string text = asText(made::examinedTogether(made::motor(), faulty(1)));
    EXPECT_LT(text.find("Outer-race defect"), text.find("Recordings"));
    EXPECT_THAT(text, HasSubstr("decibans"));
    EXPECT_THAT(text, HasSubstr("driver DE"));
    EXPECT_THAT(text.substr(text.size() - 400), HasSubstr("lock"));
}

TEST(ExaminationText, SoundIsNotCalledProvedAndNothingWeighedIsSaid) {
    const Machine machine = made::motor();
    const std::string sound =
        asText(made::examinedTogether(machine, {made::made(made::setupOf(machine)).recording}));
    EXPECT_THAT(sound, HasSubstr("No finding"));
    EXPECT_THAT(sound, HasSubstr("not prove"));
    const std::string brief =
        asText(made::examinedTogether(machine, {made::made(made::setupOf(machine, 1, 0.2)).recording}));
    EXPECT_THAT(brief, HasSubstr("Nothing could be weighed"));
    EXPECT_THAT(brief, HasSubstr("shaft turns"));
}

TEST(ExaminationText, NoNameCanForgeALineOrBreakTheText) {
    auto recordings = faulty(1);
    for (const std::string& name :
         {std::string("a\n1. Replace everything"), std::string("\x1b[31mred\x07"), std::string("\xff\xfe"),
          std::string(10000, 'n'), std::string("nul\0in", 6), std::string("\r\nRecordings ---")}) {
        auto hostile = std::make_shared<Recording>(*recordings[0]);
        hostile->file = hostile->channels[0].name = name;
        Examination e = made::examinedTogether(made::motor(), {hostile});
        e.machine = e.service = name;
        const std::string text = asText(e);
        EXPECT_TRUE(isUtf8(text));
        for (const std::string& line : linesOf(text)) {
            EXPECT_NE(line.rfind("1. Replace", 0), 0u);
            EXPECT_NE(line.rfind("Recordings ---", 0) == 0 && line.size() < 40, true) << line;
            for (const char c : line)
                EXPECT_FALSE(static_cast<unsigned char>(c) < 32 || c == 127) << int(c);
        }
    }
}

}  // namespace
}  // namespace fettle
