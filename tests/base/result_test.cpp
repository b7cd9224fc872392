#include "core/base/result.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

TEST(ErrorSentence, NamesFilePlaceAndRule) {
    const Error error{ErrorKind::Damaged, "a.wav", "byte 44", "ends after 3 of 8 frames"};
    EXPECT_EQ(error.sentence(), "a.wav: byte 44: ends after 3 of 8 frames");
}

TEST(ErrorSentence, LeavesEmptyPartsOut) {
    EXPECT_EQ((Error{ErrorKind::NotFound, "a.wav", "", "no such file"}).sentence(), "a.wav: no such file");
    EXPECT_EQ((Error{ErrorKind::Invalid, "", "/driver", "is required"}).sentence(), "/driver: is required");
    EXPECT_EQ((Error{ErrorKind::Invalid, "", "", "is required"}).sentence(), "is required");
}

TEST(ErrorSentence, IsOneLineWhateverAFileIsCalled) {
    const Error error{ErrorKind::NotFound, "a\nb\x1b[2J.wav", "", "no such file"};
    EXPECT_EQ(error.sentence(), "a?b?[2J.wav: no such file");
}

TEST(Fail, CarriesEveryPartThrough) {
    const Result<int> result = fail(ErrorKind::Unwritable, "f", "p", "r");
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().kind, ErrorKind::Unwritable);
    const Status again = fail(result.error());
    EXPECT_EQ(again.error().file, "f");
    EXPECT_EQ(again.error().place, "p");
    EXPECT_EQ(again.error().rule, "r");
}

}  // namespace
}  // namespace fettle
