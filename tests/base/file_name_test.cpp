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

}  // namespace
}  // namespace fettle
