#include "core/round/verify_window.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kGreasedRunInHours = 24, kBearingRunInHours = 72;

std::chrono::milliseconds ofHours(double hours) {
    return std::chrono::milliseconds(std::llround(hours * 3.6e6));
}

std::vector<RunValue> weekBefore(std::span<const RunValue> moments, int doneDay,
                                 const VerifyOptions& options) {
    std::vector<RunValue> week;
    std::optional<int> last;
    for (auto one = moments.rbegin(); one != moments.rend(); ++one) {
        const int day = dayOf(one->time);
        if (day >= doneDay) continue;
        if (!last) last = day;
        if (*last < doneDay - options.beforeLookBack || day <= *last - options.beforeDays) break;
        week.push_back(*one);
    }
    std::reverse(week.begin(), week.end());
    return week;
}

// At most `most`, the first and the last among them, evenly between.
std::vector<Instant> spread(const std::vector<Instant>& all, std::size_t most) {
    if (all.size() <= most) return all;
    std::vector<Instant> some;
    for (std::size_t i = 0; i < most; ++i)
        some.push_back(all[i * (all.size() - 1) / (most - 1)]);
    return some;
}

std::vector<Instant> likeMoments(std::span<const RunValue> moments, const Condition& like) {
    std::vector<Instant> alike;
    for (const RunValue& one : moments)
        if (like.holds(one)) alike.push_back(one.time);
    return alike;
}

std::string likeWords(const Condition& like) {
    return like.words().empty() ? "running" : "running " + like.words();
}

std::string unlikeWords(const VerifyWindow& window) {
    if (window.unlike == 0) return "";
    return fmt::format("; {} at other speed or load", window.unlike);
}

// Since the work: what is like, and what is not.
std::vector<Instant> takeAfter(std::span<const RunValue> moments, Instant done, VerifyWindow& window) {
    const auto first =
        std::find_if(moments.begin(), moments.end(), [done](const RunValue& one) { return one.time > done; });
    const std::span<const RunValue> since(first, moments.end());
    auto alike = likeMoments(since, window.like);
    window.unlike = since.size() - alike.size();
    return alike;
}

void collect(const std::vector<Instant>& alike, Instant known, const VerifyOptions& options,
             VerifyWindow& window) {
    const Instant from = *window.runInEnds;
    const Instant longest = from + ofHours(options.longestHours);
    std::vector<Instant> taken;
    for (const Instant one : alike) {
        const bool counts =
            one < *window.collectingEnds || (taken.size() < options.fewestMoments && one < longest);
        if (one >= from && counts) taken.push_back(one);
    }
    const bool enough = taken.size() >= options.fewestMoments;
    window.after = spread(taken, options.mostMoments);
    if (enough && known >= *window.collectingEnds) {
        window.state = VerifyState::Complete;
        window.words = fmt::format("{} moments at like speed and load from {} to {}", window.after.size(),
                                   formatDate(window.after.front()), formatDate(window.after.back()));
    } else if (known >= longest) {
        window.state = VerifyState::TooFew;
        window.words = fmt::format("only {} of {} moments at like speed and load by {}", taken.size(),
                                   options.fewestMoments, formatDate(longest)) +
                       unlikeWords(window);
    } else {
        window.state = VerifyState::Collecting;
        window.words = fmt::format("{} of up to {} moments at like speed and load{}", window.after.size(),
                                   options.mostMoments, unlikeWords(window));
        if (known < *window.collectingEnds)
            window.words += "; complete on " + formatDate(*window.collectingEnds);
    }
}

}  // namespace

double runInHours(std::span<const std::string> faults, bool greasedOnly) {
    const bool bearing = std::any_of(faults.begin(), faults.end(),
                                     [](const std::string& fault) { return fault.starts_with("bearing_"); });
    if (greasedOnly) return kGreasedRunInHours;
    return bearing ? kBearingRunInHours : 0;
}

VerifyWindow verifyWindow(std::span<const RunValue> moments, Instant done, Instant known,
                          const VerifyOptions& options) {
    VerifyWindow window;
    const std::vector<RunValue> week = weekBefore(moments, dayOf(done), options);
    const auto usual = usualCondition(week);
    if (!usual) {
        window.state = VerifyState::NothingBefore;
        window.words =
            fmt::format("it was not recorded running in the {} days before the work", options.beforeLookBack);
        return window;
    }
    window.like = *usual;
    window.before = spread(likeMoments(week, *usual), options.mostMoments);
    const std::vector<Instant> alike = takeAfter(moments, done, window);
    if (alike.empty()) {
        const bool given = window.unlike > 0 && known >= done + ofHours(options.longestHours);
        window.state = given ? VerifyState::TooFew : VerifyState::NotRunYet;
        window.words = "not yet recorded " + likeWords(*usual) + " since the work" + unlikeWords(window);
        return window;
    }
    window.firstRun = alike.front();
    window.runInEnds = alike.front() + ofHours(options.runInHours);
    window.collectingEnds = *window.runInEnds + ofHours(options.collectHours);
    if (known < *window.runInEnds) {
        window.state = VerifyState::RunIn;
        window.words = fmt::format("running in since {}, until {}", formatDate(*window.firstRun),
                                   formatDate(*window.runInEnds));
        return window;
    }
    collect(alike, known, options, window);
    return window;
}

}  // namespace fettle
