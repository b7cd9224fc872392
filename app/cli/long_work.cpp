#include "app/cli/long_work.h"

#include <fmt/format.h>

#include <chrono>
#include <csignal>

#include "app/cli/load.h"
#include "core/base/text.h"

namespace fettle {

namespace {

const CancelToken& signalToken() {
    static const CancelToken token;
    return token;
}

void onSignal(int number) {
    signalToken().cancel();
    std::signal(number, SIG_DFL);
}

}  // namespace

Progress progressOnStderr() {
    using Clock = std::chrono::steady_clock;
    const auto pause = std::chrono::seconds(stderrIsTerminal() ? 1 : 10);
    return [pause, next = Clock::now() + pause](std::size_t done, std::size_t total,
                                                std::string_view what) mutable {
        const auto now = Clock::now();
        if (now < next) return;
        next = now + pause;
        tell(fmt::format("{} of {}: {}", done, total, oneLine(what)));
    };
}

CancelToken cancelledBySignals() {
    const CancelToken token = signalToken();  // made before a signal can come
    std::signal(SIGINT, onSignal);
    std::signal(SIGTERM, onSignal);
    return token;
}

}  // namespace fettle
