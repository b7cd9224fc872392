#include "core/simulate/random_stream.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fettle::sim {
namespace {

// Noll's published values for the empty text, "a" and "foobar" (from memory, reproduced by a separate Python
// program).
TEST(Fnv1a, PublishedValues) {
    EXPECT_EQ(fnv1a(""), 0xCBF29CE484222325ULL);
    EXPECT_EQ(fnv1a("a"), 0xAF63DC4C8601EC8CULL);
    EXPECT_EQ(fnv1a("foobar"), 0x85944171F73967E8ULL);
    EXPECT_EQ(fnv1a("bar", fnv1a("foo")), fnv1a("foobar"));
}

// xoshiro256** with its state filled by splitmix64 from 1234567: computed by a separate Python program whose
// splitmix64 gives the widely published 6457827717110365317, 3203168211198807973 .. and whose generator gives
// 11520, 0, 1509978240, 1215971899390074240 from the state 1, 2, 3, 4 (from memory).
TEST(RandomStream, GivesThePublishedSequence) {
    RandomStream stream(1234567);
    EXPECT_EQ(stream.next(), 3504822795582309479ULL);
    EXPECT_EQ(stream.next(), 1819558768956484042ULL);
    EXPECT_EQ(stream.next(), 1250851346055027673ULL);
    EXPECT_EQ(stream.next(), 16940231675099994102ULL);
}

// Moments of the normal distribution 0, 1, 0, 3; each within five standard errors of 400 000 draws.
TEST(RandomStream, NormalMoments) {
    RandomStream stream(7);
    constexpr int kDraws = 400000;
    double sum = 0, squares = 0, fourth = 0;
    for (int i = 0; i < kDraws; ++i) {
        const double x = stream.normal();
        sum += x;
        squares += x * x;
        fourth += x * x * x * x;
    }
    EXPECT_NEAR(sum / kDraws, 0, 5 / std::sqrt(kDraws));
    EXPECT_NEAR(squares / kDraws, 1, 5 * std::sqrt(2.0 / kDraws));
    EXPECT_NEAR(fourth / kDraws, 3, 5 * std::sqrt(96.0 / kDraws));
}

TEST(RandomStream, StreamsOfDifferentPurposeDiffer) {
    EXPECT_NE(RandomStream(1, "noise").next(), RandomStream(1, "load").next());
    EXPECT_NE(RandomStream(1, "noise").next(), RandomStream(2, "noise").next());
    EXPECT_EQ(RandomStream(1, "noise").next(), RandomStream(1, "noise").next());
}

// Many at a time are the same numbers as one after another, whatever was drawn before.
TEST(RandomStream, NormalsInBulkAreThoseDrawnSingly) {
    for (const std::size_t before : {0, 1, 2})
        for (const std::size_t count : {0, 1, 2, 511, 512, 513, 1500}) {
            RandomStream one(7), bulk(7);
            for (std::size_t i = 0; i < before; ++i)
                EXPECT_EQ(one.normal(), bulk.normal());
            for (const double value : bulk.normals(count))
                EXPECT_EQ(value, one.normal());
            EXPECT_EQ(bulk.normal(), one.normal()) << before << " " << count;
        }
}

}  // namespace
}  // namespace fettle::sim
