#include "core/base/text.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/base/comma_locale.h"

namespace fettle {
namespace {

TEST(ParseNumber, TakesWhatANumberMayLookLike) {
    EXPECT_EQ(parseNumber("1483.2"), 1483.2);
    EXPECT_EQ(parseNumber("  -0.5\t"), -0.5);
    EXPECT_EQ(parseNumber("+3"), 3.0);
    EXPECT_EQ(parseNumber("7.8125e-05"), 7.8125e-05);
    EXPECT_EQ(parseNumber("1E3"), 1000.0);
    EXPECT_EQ(parseNumber(".5"), 0.5);
    EXPECT_EQ(parseNumber("5."), 5.0);
    // The smallest double that is not zero: IEEE 754 binary64, 2^-1074.
    EXPECT_EQ(parseNumber("4.9406564584124654e-324"), std::ldexp(1.0, -1074));
}

TEST(ParseNumber, LeavesNanAndInfinityToTheCaller) {
    EXPECT_TRUE(std::isnan(parseNumber("nan").value()));
    EXPECT_TRUE(std::isinf(parseNumber("-inf").value()));
}

TEST(ParseNumber, RefusesAllElse) {
    for (const char* text : {"", " ", "+", "-", ".", "e5", "1,5", "1.5 2", "0x10", "1.5g", "+-5", "-+5",
                             "++5", "1e", "1e999", "1_000", "1'000"})
        EXPECT_FALSE(parseNumber(text)) << text;
}

TEST(ParseNumber, IsTheSameUnderACommaLocale) {
    const CommaLocale comma;
    EXPECT_EQ(parseNumber("1234.5"), 1234.5);
    EXPECT_FALSE(parseNumber("1234,5"));
    EXPECT_EQ(parseInteger("1234"), 1234);
}

TEST(ParseInteger, TakesWholeNumbersOnly) {
    EXPECT_EQ(parseInteger(" 51200 "), 51200);
    EXPECT_EQ(parseInteger("-7"), -7);
    EXPECT_EQ(parseInteger("9223372036854775807"), 9223372036854775807LL);
    for (const char* text : {"", "1.0", "1e3", "9223372036854775808", "12 34", "+-1", "five"})
        EXPECT_FALSE(parseInteger(text)) << text;
}

TEST(Split, KeepsEmptyParts) {
    EXPECT_EQ(split("a,,b,", ','), (std::vector<std::string_view>{"a", "", "b", ""}));
    EXPECT_EQ(split("", ','), (std::vector<std::string_view>{""}));
}

TEST(Joined, IsTheOtherWayRoundOfSplit) {
    EXPECT_EQ(joined({"a", "", "b", ""}, ","), "a,,b,");
    EXPECT_EQ(joined({"", "a"}, ", "), ", a");
    EXPECT_EQ(joined({}, ","), "");
}

TEST(Trimmed, TakesSpacesAndLineEndsOff) {
    EXPECT_EQ(trimmed(" \t a b \r\n"), "a b");
    EXPECT_EQ(trimmed(" \n"), "");
}

TEST(LowerAscii, LeavesOtherLettersAlone) {
    EXPECT_EQ(lowerAscii("WAV \xc3\x84"), "wav \xc3\x84");
}

// RFC 3629 section 3 and 4: overlong forms, surrogates and what lies beyond U+10FFFF are no UTF-8.
TEST(IsUtf8, FollowsTheStandard) {
    EXPECT_TRUE(isUtf8(""));
    EXPECT_TRUE(isUtf8("\xc2\xb5m/s\xc2\xb2 \xe2\x82\xac \xf0\x9f\x94\xa7"));
    for (const char* text : {"\xb5", "\xc2", "\xc0\xaf", "\xe0\x80\xaf", "\xed\xa0\x80", "\xf4\x90\x80\x80",
                             "\xf8\x88\x80\x80\x80"})
        EXPECT_FALSE(isUtf8(text)) << oneLine(text);
}

TEST(OneLine, CannotBreakALine) {
    EXPECT_EQ(oneLine("a\nb\r\tc\x1b[31m\x7f"), "a?b??c?[31m?");
    EXPECT_EQ(oneLine("\xc2\x85 \xe2\x80\xa8 \xe2\x80\xa9"),
              "? ? ?");  // next line, line and paragraph separator
    EXPECT_EQ(oneLine("\xc2\xb5m"), "\xc2\xb5m");
    EXPECT_EQ(oneLine(std::string("a\0b", 3)), "a?b");
}

TEST(OneLine, IsUtf8WhateverComesIn) {
    EXPECT_EQ(oneLine("\xb5m \xe2\x82"), "?m ??");
    std::string all;
    for (int c = 0; c < 256; ++c)
        all += static_cast<char>(c);
    EXPECT_TRUE(isUtf8(oneLine(all)));
}

TEST(OneLine, CutsBetweenCharacters) {
    EXPECT_EQ(oneLine("abcd", 4), "abcd");
    EXPECT_EQ(oneLine("abcde", 4), "abcd...");
    EXPECT_EQ(oneLine("abc\xc2\xb5", 4), "abc...");
}

}  // namespace
}  // namespace fettle
