// Tags made into names of files. Source: signs that common file systems refuse, from memory.
#include "core/base/file_name.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

TEST(FileNameFrom, TwoTextsNeverGetOneName) {
    std::set<std::string> used;
    EXPECT_EQ(fileNameFrom("A/B", used), "A_B");
    EXPECT_EQ(fileNameFrom("A:B", used), "A_B_2");
    EXPECT_EQ(fileNameFrom("A_B_2", used), "A_B_2_2");
    EXPECT_EQ(fileNameFrom("A\nB", used), "A_B_3");
    EXPECT_EQ(fileNameFrom("../x", used), "_.._x");
    EXPECT_EQ(fileNameFrom("-o", used), "_-o");
    EXPECT_EQ(fileNameFrom("", used), "_");
    EXPECT_EQ(fileNameFrom("\xc2\xb5", used), "\xc2\xb5");
}

// 255 bytes: NAME_MAX of Linux's file systems (limits.h).
TEST(FileNameFrom, ALongTextIsCutAndStaysTellable) {
    std::set<std::string> used;
    std::string first = "\xc2\xb5", second;
    for (int i = 0; i < 5000; ++i)
        first += "\xc2\xb5";
    second = first + "x";
    const std::string one = fileNameFrom(first, used), two = fileNameFrom(second, used);
    EXPECT_LT(one.size(), 200u);
    EXPECT_LT(two.size(), 200u);
    EXPECT_NE(one, two);
    EXPECT_EQ(one.compare(0, 8, first, 0, 8), 0);
}

TEST(FileNameFrom, ControlCharactersAndBrokenUtf8StayOut) {
    std::set<std::string> used;
    EXPECT_EQ(fileNameFrom("a\x1b[31mb", used), "a_[31mb");
    EXPECT_EQ(fileNameFrom(std::string("a\0b", 3), used), "a_b");
    EXPECT_EQ(fileNameFrom("a\x7f\xc2\x9b\xff", used), "a___");
}

}  // namespace
}  // namespace fettle
