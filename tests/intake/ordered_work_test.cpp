#include "core/intake/ordered_work.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

struct Piece {
    std::size_t index = 0, bytes = 1;
};

void waitAwhile(std::size_t index) {
    std::this_thread::sleep_for(std::chrono::microseconds((index * 7919) % 900));
}

TEST(OrderedWork, InOrderWhoeverIsFirst) {
    for (const int threads : {1, 2, 7}) {
        OrderedWork<Piece> work(200, threads, [] {
            return [](std::size_t i) {
                waitAwhile(i);
                return Piece{i, 1};
            };
        });
        std::size_t next = 0;
        while (const auto piece = work.take({}))
            EXPECT_EQ(piece->index, next++);
        EXPECT_EQ(next, 200u);
    }
}

TEST(OrderedWork, EachWorkerHasWhatIsItsOwn) {
    std::atomic<int> made{0};
    OrderedWork<Piece> work(40, 3, [&] {
        ++made;
        return [mine = std::make_shared<std::size_t>(0)](std::size_t i) {
            ++*mine;  // a data race if it were shared
            return Piece{i, 1};
        };
    });
    while (work.take({})) {
    }
    EXPECT_LE(made, 3);
}

// Never more than the bound of bytes waits, and a piece larger than the bound still comes through.
TEST(OrderedWork, BoundOfBytes) {
    std::atomic<std::size_t> finished{0}, taken{0};
    std::atomic<std::size_t> most{0};
    {
        OrderedWork<Piece> work(60, 4,
                                [&] {
                                    return [&](std::size_t i) {
                                        most = std::max(most.load(), ++finished - taken);
                                        return Piece{i, i % 10 == 0 ? std::size_t(1000) : std::size_t(30)};
                                    };
                                },
                                {100, 100});
        std::size_t next = 0;
        while (const auto piece = work.take({})) {
            EXPECT_EQ(piece->index, next++);
            ++taken;
            waitAwhile(piece->index);
        }
        EXPECT_EQ(next, 60u);
    }
    // Three of 30 wait at most beside a large one that is next; one more in the hand of each worker and of
    // the taker.
    EXPECT_LE(most, 3u + 1 + 4 + 1);
}

TEST(OrderedWork, BoundOfNumber) {
    std::atomic<std::size_t> finished{0}, taken{0}, most{0};
    OrderedWork<Piece> work(100, 3,
                            [&] {
                                return [&](std::size_t i) {
                                    most = std::max(most.load(), ++finished - taken);
                                    return Piece{i, 0};
                                };
                            },
                            {5, 1000});
    while (const auto piece = work.take({})) {
        ++taken;
        waitAwhile(piece->index);
    }
    EXPECT_LE(most, 5u + 3 + 1);
}

TEST(OrderedWork, CancelledGivesNothingMoreAndEnds) {
    CancelToken cancel;
    std::size_t got = 0;
    {
        OrderedWork<Piece> work(1000000, 3, [] { return [](std::size_t i) { return Piece{i, 1}; }; });
        while (work.take(cancel))
            if (++got == 10) cancel.cancel();
    }
    EXPECT_EQ(got, 10u);
}

TEST(OrderedWork, NothingToDo) {
    OrderedWork<Piece> work(0, 2, [] { return [](std::size_t i) { return Piece{i, 1}; }; });
    EXPECT_FALSE(work.take({}));
}

}  // namespace
}  // namespace fettle
