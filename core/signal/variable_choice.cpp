#include "core/signal/variable_choice.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {

constexpr std::uint64_t kFewestSamples = 32, kLongOverShort = 16;
constexpr std::size_t kMostTold = 12;
constexpr double kOneRate = 1e-6;

std::string lastPart(const std::string& name) {
    return lowerAscii(name.substr(name.rfind('/') + 1));
}

bool isOneOf(const std::string& name, std::initializer_list<const char*> names) {
    return std::any_of(names.begin(), names.end(), [&](const char* one) { return name == one; });
}

bool namesRate(const std::string& name) {
    return isOneOf(lastPart(name),
                   {"fs", "fs_hz", "sample_rate", "samplerate", "sample_rate_hz", "sampling_rate",
                    "samplingrate", "sampling_frequency", "samplingfrequency", "sample_frequency"});
}
bool namesStep(const std::string& name) {
    return isOneOf(lastPart(name),
                   {"dt", "delta_t", "sample_interval", "sampling_interval", "sampling_period"});
}
bool namesTime(const std::string& name) {
    return isOneOf(lastPart(name), {"t", "time"});
}

std::string shapeWord(const Variable& variable) {
    std::vector<std::string> sizes;
    for (const std::uint64_t size : variable.shape)
        sizes.push_back(std::to_string(size));
    return fmt::format("{} ({})", oneLine(variable.name, 80), joined(sizes, " x "));
}

std::string wordsOf(const VariableList& list, const std::vector<std::size_t>& places) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < std::min(places.size(), kMostTold); ++i)
        words.push_back(shapeWord(list.variables[places[i]]));
    if (places.size() > kMostTold) words.push_back("and others");
    return words.empty() ? "none" : joined(words, ", ");
}

class Choice {
  public:
    Choice(const VariableList& list, const ReadingHints& hints, const std::string& file)
        : list_(list), hints_(hints), file_(file) {}

    Result<VariableChoice> make() {
        sort();
        if (auto good = chooseSamples(); !good) return fail(good.error());
        if (auto good = chooseRate(); !good) return fail(good.error());
        return std::move(choice_);
    }

  private:
    void sort() {
        for (std::size_t i = 0; i < list_.variables.size(); ++i) {
            if (!sizeOf(list_.variables[i])) continue;
            (namesTime(list_.variables[i].name) ? times_ : fit_).push_back(i);
        }
    }
    tl::unexpected<Error> no(const char* place, std::string rule) const {
        return fail(ErrorKind::Invalid, file_, place, std::move(rule));
    }

    std::vector<std::string> namesInFile() const {
        for (const NamedValue& value : list_.values)
            if (value.name == "samples" && !value.text.empty()) {
                std::vector<std::string> names;
                for (const std::string_view name : split(value.text, ','))
                    names.emplace_back(trimmed(name));
                return names;
            }
        return {};
    }

    Status chooseSamples() {
        const std::vector<std::string> names = hints_.samples.empty() ? namesInFile() : hints_.samples;
        if (!names.empty()) return chooseNamed(names);
        if (fit_.empty())
            return no("/samples",
                      "no variable could be samples: real numbers in a vector, or in a matrix of one "
                      "long dimension, of 32 or more" +
                          notLookedInto());
        if (fit_.size() > 1)
            return no("/samples", "more than one variable could be the samples: " + wordsOf(list_, fit_) +
                                      "; name them in the sidecar or a rule as \"samples\"");
        choice_.samples = fit_;
        choice_.warnings.push_back(fmt::format("samples taken from {}, the only variable that fits",
                                               shapeWord(list_.variables[fit_[0]])));
        return {};
    }

    std::string notLookedInto() const { return list_.notes.empty() ? "" : "; " + joined(list_.notes, "; "); }

    Status chooseNamed(const std::vector<std::string>& names) {
        for (const std::string& name : names) {
            std::vector<std::size_t> matching;
            for (std::size_t i = 0; i < list_.variables.size(); ++i)
                if (sizeOf(list_.variables[i]) && matchesName(name, list_.variables[i].name))
                    matching.push_back(i);
            if (matching.size() != 1)
                return no("/samples",
                          fmt::format("{} variables of samples are named \"{}\", there must be one; there "
                                      "are: {}",
                                      matching.size(), oneLine(name, 80), wordsOf(list_, fit_)));
            choice_.samples.push_back(matching[0]);
        }
        return sameLength();
    }

    Status sameLength() const {
        const std::uint64_t first = sizeOf(list_.variables[choice_.samples[0]])->samples;
        for (const std::size_t i : choice_.samples)
            if (sizeOf(list_.variables[i])->samples != first)
                return no("/samples", "are not of one length: " + wordsOf(list_, choice_.samples));
        return {};
    }

    // Every rate the file tells, with the name it stands under.
    std::vector<std::pair<double, std::string>> ratesTold() const {
        std::vector<std::pair<double, std::string>> rates;
        const auto look = [&](const std::vector<NamedValue>& values, const std::string& of) {
            for (const NamedValue& value : values) {
                if (!value.number || !(*value.number > 0)) continue;
                if (namesRate(value.name)) rates.emplace_back(*value.number, of + value.name);
                if (namesStep(value.name)) rates.emplace_back(1 / *value.number, of + value.name);
            }
        };
        for (const std::size_t i : choice_.samples)
            look(list_.variables[i].attributes, list_.variables[i].name + "/");
        if (rates.empty()) look(list_.values, "");
        return rates;
    }

    Status chooseRate() {
        const auto told = ratesTold();
        for (const auto& [rate, name] : told)
            if (!(std::abs(rate / told[0].first - 1) <= kOneRate))
                return no("/sample_rate_hz",
                          fmt::format("{} says {} Hz, {} says {} Hz", oneLine(told[0].second, 80),
                                      told[0].first, oneLine(name, 80), rate));
        if (!told.empty()) {
            choice_.sampleRateHz = told[0].first;
            choice_.warnings.push_back(
                fmt::format("sample rate {} Hz taken from {}", told[0].first, oneLine(told[0].second, 80)));
            return checkRate(told[0].first, file_, "/sample_rate_hz");
        }
        const std::uint64_t samples = sizeOf(list_.variables[choice_.samples[0]])->samples;
        std::vector<std::size_t> fitting;
        for (const std::size_t i : times_)
            if (const auto size = sizeOf(list_.variables[i]); size->channels == 1 && size->samples == samples)
                fitting.push_back(i);
        if (fitting.size() == 1) {
            choice_.time = fitting[0];
            return {};
        }
        if (!hints_.sampleRateHz)
            return no("/sample_rate_hz",
                      "nothing in the file tells the sample rate: say it in the sidecar or a rule as "
                      "\"sample_rate_hz\"");
        choice_.sampleRateHz = hints_.sampleRateHz;
        return checkRate(*hints_.sampleRateHz, file_, "/sample_rate_hz");
    }

    const VariableList& list_;
    const ReadingHints& hints_;
    const std::string& file_;
    std::vector<std::size_t> fit_, times_;
    VariableChoice choice_;
};

}  // namespace

std::optional<VariableSize> sizeOf(const Variable& variable) {
    if (!variable.isReal) return std::nullopt;
    std::vector<std::uint64_t> sizes;
    std::vector<std::size_t> at;
    for (std::size_t d = 0; d < variable.shape.size(); ++d) {
        if (variable.shape[d] == 0) return std::nullopt;
        if (variable.shape[d] > 1) sizes.push_back(variable.shape[d]), at.push_back(d);
    }
    if (sizes.size() == 1 && sizes[0] >= kFewestSamples) return VariableSize{sizes[0], 1, true};
    if (sizes.size() != 2) return std::nullopt;
    const bool longFirst = sizes[0] >= sizes[1];
    const VariableSize size{std::max(sizes[0], sizes[1]), std::min(sizes[0], sizes[1]), longFirst};
    if (size.samples < kFewestSamples || size.samples / kLongOverShort < size.channels) return std::nullopt;
    return size;
}

bool matchesName(const std::string& pattern, const std::string& name) {
    std::size_t p = 0, n = 0, star = pattern.npos, from = 0;
    while (n < name.size()) {
        if (p < pattern.size() && pattern[p] == '*') {
            star = p++;
            from = n;
        } else if (p < pattern.size() && pattern[p] == name[n]) {
            ++p, ++n;
        } else if (star != pattern.npos) {
            p = star + 1;
            n = ++from;
        } else {
            return false;
        }
    }
    while (p < pattern.size() && pattern[p] == '*')
        ++p;
    return p == pattern.size();
}

Result<VariableChoice> chooseVariables(const VariableList& list, const ReadingHints& hints,
                                       const std::string& file) {
    return Choice(list, hints, file).make();
}

}  // namespace fettle
