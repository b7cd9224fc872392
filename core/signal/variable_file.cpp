#include "core/signal/variable_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/signal/capture_facts.h"
#include "core/signal/contained_program.h"
#include "core/signal/recording_limits.h"
#include "core/signal/stored_number.h"
#include "core/signal/variable_choice.h"
#include "core/signal/variable_list.h"

namespace fettle {

namespace {

constexpr std::size_t kMatHead = 128;
constexpr double kUnevenVariable = 0.01;  // of a step

class VariableFile {
  public:
    VariableFile(const std::string& bytes, const std::string& file, const char* format)
        : bytes_(bytes), file_(file), format_(format) {}

    Result<Recording> read(const ReadingHints& hints) {
        auto answer = runContained(bytes_, {"list", format_}, file_);
        if (!answer) return fail(answer.error());
        auto list = variableListFrom(answer->json);
        if (!list) return fail(ErrorKind::Damaged, file_, "byte 0", list.error());
        auto choice = chooseVariables(*list, hints, file_);
        if (!choice) return fail(choice.error());
        Recording recording;
        recording.file = file_;
        if (auto good = readChannels(*list, *choice, recording); !good) return fail(good.error());
        if (auto good = setRate(*list, *choice, recording); !good) return fail(good.error());
        if (auto good = setFacts(list->values, recording); !good) return fail(good.error());
        for (const std::vector<std::string>* words : {&choice->warnings, &list->notes})
            for (const std::string& word : *words)
                recording.warnings.push_back(fmt::format("{}: {}", oneLine(file_), word));
        if (auto good = checkSamples(recording, file_); !good) return fail(good.error());
        return recording;
    }

  private:
    Result<std::vector<double>> numbersOf(const Variable& variable, std::size_t place) const {
        const VariableSize size = *sizeOf(variable);
        if (auto good = checkChannelCount(size.channels, file_, variable.name); !good)
            return fail(good.error());
        if (auto good = checkSampleCount(size.samples, size.channels, file_, variable.name); !good)
            return fail(good.error());
        auto answer = runContained(bytes_, {"read", format_, std::to_string(place)}, file_);
        if (!answer) return fail(answer.error());
        if (answer->numbers.size() != size.samples * size.channels)
            return fail(ErrorKind::Damaged, file_, oneLine(variable.name, 80),
                        fmt::format("states {} numbers, {} follow", size.samples * size.channels,
                                    answer->numbers.size()));
        return std::move(answer->numbers);
    }

    void addChannels(const Variable& variable, bool firstFastest, std::vector<double> numbers,
                     Recording& recording) const {
        const VariableSize size = *sizeOf(variable);
        const std::string name = variable.name.substr(variable.name.rfind('/') + 1);
        const bool together =
            size.channels == 1 || size.longFirst == firstFastest;  // a channel after the other
        for (std::uint64_t c = 0; c < size.channels; ++c) {
            Channel& channel = recording.channels.emplace_back();
            channel.name = oneLine(size.channels == 1 ? name : fmt::format("{}_{}", name, c + 1), 200);
            for (const NamedValue& value : variable.attributes)
                if (value.name == "unit" || value.name == "units") channel.unit = oneLine(value.text, 40);
            if (size.channels == 1) {
                channel.samples = std::move(numbers);
                return;
            }
            channel.samples.reserve(std::size_t(size.samples));
            for (std::uint64_t i = 0; i < size.samples; ++i)
                channel.samples.push_back(numbers[together ? c * size.samples + i : i * size.channels + c]);
        }
    }

    Status readChannels(const VariableList& list, const VariableChoice& choice, Recording& recording) const {
        std::uint64_t channels = 0;
        for (const std::size_t place : choice.samples)
            channels += sizeOf(list.variables[place])->channels;
        const std::uint64_t each = sizeOf(list.variables[choice.samples[0]])->samples;
        if (auto good = checkChannelCount(channels, file_, "/samples"); !good) return good;
        if (auto good = checkSampleCount(each, channels, file_, "/samples"); !good) return good;
        for (const std::size_t place : choice.samples) {
            auto numbers = numbersOf(list.variables[place], place);
            if (!numbers) return fail(numbers.error());
            addChannels(list.variables[place], list.firstFastest, std::move(*numbers), recording);
        }
        return {};
    }

    Result<double> rateOf(const std::vector<double>& times, const std::string& name) const {
        const double step = (times.back() - times.front()) / double(times.size() - 1);
        for (std::size_t i = 1; i < times.size(); ++i)
            if (!(step > 0) || !(std::abs(times[i] - times[i - 1] - step) <= kUnevenVariable * step))
                return fail(ErrorKind::Invalid, file_, "/sample_rate_hz",
                            fmt::format("the times of {} do not grow in even steps (number {})",
                                        oneLine(name, 80), i + 1));
        const double rate = 1 / step, nearest = std::round(rate);
        return std::abs(rate - nearest) <= 1e-6 * rate ? nearest : rate;
    }

    Status setRate(const VariableList& list, const VariableChoice& choice, Recording& recording) const {
        double rate = choice.sampleRateHz.value_or(0);
        if (choice.time) {
            const std::string& name = list.variables[*choice.time].name;
            const auto times = numbersOf(list.variables[*choice.time], *choice.time);
            if (!times) return fail(times.error());
            const auto told = rateOf(*times, name);
            if (!told) return fail(told.error());
            rate = *told;
            recording.warnings.push_back(fmt::format("{}: sample rate {} Hz taken from {}, taken for seconds",
                                                     oneLine(file_), rate, oneLine(name, 80)));
        }
        for (Channel& channel : recording.channels)
            channel.sampleRateHz = rate;
        return checkRate(rate, file_, "/sample_rate_hz");
    }

    // Texts and numbers that stand under the keys of a sidecar.
    Status setFacts(const std::vector<NamedValue>& values, Recording& recording) const {
        for (const NamedValue& value : values) {
            for (const TextFact& fact : textFacts())
                if (value.name == fact.key) recording.*fact.member = value.text;
            for (const TimeFact& fact : timeFacts()) {
                if (value.name != fact.key || value.text.empty()) continue;
                const auto time = parseCaptureTime(value.text);
                if (!time) return fail(ErrorKind::Invalid, file_, std::string("/") + fact.key, time.error());
                recording.*fact.member = *time;
            }
            for (const NumberFact& fact : numberFacts())
                if (value.name == fact.key && value.number && *value.number >= fact.least &&
                    *value.number <= fact.most)
                    recording.*fact.member = *value.number;
        }
        return {};
    }

    const std::string& bytes_;
    const std::string& file_;
    const char* format_;
};

bool startsAs(const std::string& bytes, const char* sign) {
    return bytes.starts_with(sign);
}

// Whether the data elements of a MAT 5 file end where the file does.
Status walkMat5(const std::string& bytes, const std::string& file) {
    if (bytes.size() < kMatHead + 8)
        return fail(ErrorKind::Damaged, file, fmt::format("byte {}", bytes.size()),
                    "breaks off within its head");
    const std::string order = bytes.substr(126, 2);
    if (order != "IM" && order != "MI")
        return fail(ErrorKind::Damaged, file, "byte 126", "states no byte order (MI)");
    std::uint64_t at = kMatHead;
    while (at < bytes.size()) {
        if (bytes.size() - at < 8)
            return fail(ErrorKind::Damaged, file, fmt::format("byte {}", at),
                        "breaks off within a data element");
        const std::uint64_t size = order == "IM" ? littleEndian(bytes, std::size_t(at) + 4, 4)
                                                 : bigEndian(bytes, std::size_t(at) + 4, 4);
        if (size > bytes.size() - at - 8)
            return fail(ErrorKind::Damaged, file, fmt::format("byte {}", at),
                        fmt::format("a data element of {} bytes, {} follow", size, bytes.size() - at - 8));
        at += 8 + size;
    }
    return {};
}

}  // namespace

Result<Recording> readMatAs(const std::string& bytes, const std::string& file, const ReadingHints& hints) {
    if (startsAs(bytes, "MATLAB 5.0 MAT-file")) {
        if (auto good = walkMat5(bytes, file); !good) return fail(good.error());
        return VariableFile(bytes, file, "mat").read(hints);
    }
    if (startsAs(bytes, "MATLAB 7.3 MAT-file"))  // HDF5 behind a head of its own
        return VariableFile(bytes, file, "hdf5").read(hints);
    return fail(ErrorKind::Damaged, file, "byte 0", "does not begin as a MAT file of version 5 or 7.3 does");
}

Result<Recording> readHdf5As(const std::string& bytes, const std::string& file, const ReadingHints& hints) {
    constexpr std::string_view sign = "\x89HDF\r\n\x1a\n";
    const std::string_view all = bytes;
    if (!all.starts_with(sign) && !(all.size() > 512 && all.substr(512).starts_with(sign)))
        return fail(ErrorKind::Damaged, file, "byte 0", "does not begin as an HDF5 file does");
    return VariableFile(bytes, file, "hdf5").read(hints);
}

Result<Recording> readMat(const std::string& bytes, const std::string& file) {
    return readMatAs(bytes, file, {});
}

Result<Recording> readHdf5(const std::string& bytes, const std::string& file) {
    return readHdf5As(bytes, file, {});
}

}  // namespace fettle
