// What a worker throws becomes words. Source: the C++ standard, [alloc.errors] and [exception].
#include "core/base/caught.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace fettle {
namespace {

TEST(Caught, WhatIsThrownBecomesWords) {
    int done = 0;
    EXPECT_EQ(caught([&] { ++done; }), "");
    EXPECT_EQ(done, 1);
    EXPECT_EQ(caught([] { throw std::bad_alloc(); }), "needs more memory than there is");
    EXPECT_EQ(caught([] { std::string().reserve(std::string().max_size() + 1); }).substr(0, 24),
              "could not be worked on: ");
    EXPECT_EQ(caught([] { throw std::runtime_error("no"); }), "could not be worked on: no");
}

}  // namespace
}  // namespace fettle
