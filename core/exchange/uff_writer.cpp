#include "core/exchange/uff_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <chrono>

#include "core/base/text.h"
#include "core/signal/stored_number.h"
#include "core/signal/uff_reader.h"

namespace fettle {

namespace {

constexpr std::size_t kAtOnce = 4096;  // samples
constexpr const char* kMark = "    -1\n";

std::string printable(const std::string& text, std::size_t most) {
    std::string out;
    for (const char c : text.substr(0, most))
        out += c >= ' ' && c <= '~' ? c : '?';
    const std::string_view kept = trimmed(out);
    return kept.empty() ? "NONE" : std::string(kept);
}

std::string dateOf(const Recording& recording) {
    if (!recording.time) return "NONE";
    static constexpr const char* months[] = {"JAN", "FEB", "MAR", "APR", "MAY", "JUN",
                                             "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"};
    const auto day = std::chrono::floor<std::chrono::days>(*recording.time);
    const std::chrono::year_month_day date(day);
    return fmt::format("{:02}-{}-{:02} {}", unsigned(date.day()), months[unsigned(date.month()) - 1],
                       int(date.year()) % 100, formatUtc(*recording.time).substr(11, 8));
}

int directionOf(const std::string& name) {
    const std::string letter = lowerAscii(name);
    return letter == "x" ? 1 : letter == "y" ? 2 : letter == "z" ? 3 : 0;
}

struct Quantity58 {
    int code;
    const char* name;
};

Quantity58 quantityOf(const std::string& unit) {
    const std::string lower = lowerAscii(unit);
    for (const char* one : {"g", "mg", "m/s2", "m/s^2"})
        if (lower == one) return {12, "Acceleration"};
    for (const char* one : {"mm/s", "m/s", "in/s"})
        if (lower == one) return {11, "Velocity"};
    for (const char* one : {"um", "mm", "mil"})
        if (lower == one) return {8, "Displacement"};
    return {0, "NONE"};
}

// Six digits where they give the rate back, else as many as the columns hold.
std::string incrementOf(double rateHz) {
    const std::string usual = fmt::format("{:13.5E}", 1 / rateHz);
    const std::string printed(trimmed(usual));
    return uffRateOf(1 / rateHz, printed) == rateHz ? usual : fmt::format("{:13.7E}", 1 / rateHz);
}

std::string axisRecord(int code, int length, const std::string& name, const std::string& unit) {
    return fmt::format("{:10}{:5}{:5}{:5} {:<20} {:<20}\n", code, length, 0, 0, name, unit);
}

std::string headOf(const Recording& recording, std::size_t place) {
    const Channel& channel = recording.channels[place];
    const std::string point = channel.point.empty() ? recording.point : channel.point;
    const bool fits = point.size() <= 10 && printable(point, 10) == point;
    const Quantity58 quantity = quantityOf(channel.unit);
    std::string head = printable(recording.machine + " " + point + " " + channel.name, 80) + "\nNONE\n" +
                       dateOf(recording) + "\nNONE\nNONE\n";
    head += fmt::format("{:5}{:10}{:5}{:10} {:<10}{:10}{:4} {:<10}{:10}{:4}\n", 1, place + 1, 1, 0,
                        fits ? point : "NONE", 1, directionOf(channel.name), "NONE", 0, 0);
    head += fmt::format("{:10}{:10}{:10}{:13.5E}{}{:13.5E}\n", 4, channel.samples.size(), 1, 0.0,
                        incrementOf(channel.sampleRateHz), 0.0);
    head += axisRecord(17, 0, "Time", "s");
    head += axisRecord(quantity.code, quantity.code ? 1 : 0, quantity.name, printable(channel.unit, 20));
    return head + axisRecord(0, 0, "NONE", "NONE") + axisRecord(0, 0, "NONE", "NONE");
}

std::string columns(const std::vector<double>& samples, std::size_t from, std::size_t until) {
    std::string text;
    for (std::size_t i = from; i < until; ++i) {
        fmt::format_to(std::back_inserter(text), "{:20.12E}", samples[i]);
        if (i % 4 == 3 || i + 1 == samples.size()) text += '\n';
    }
    return text;
}

std::string raw(const std::vector<double>& samples, std::size_t from, std::size_t until) {
    std::string bytes;
    for (std::size_t i = from; i < until; ++i)
        bytes += littleEndianBytes(std::bit_cast<std::uint64_t>(samples[i]), 8);
    return bytes;
}

std::string kindOf(UffText form, std::size_t samples) {
    if (form == UffText::Columns) return "    58\n";
    return fmt::format("    58b{:6}{:6}{:12}{:12}{:6}{:6}{:12}{:12}\n", 1, 2, 11, samples * 8, 0, 0, 0, 0);
}

}  // namespace

Status writeUff(const Recording& recording, UffText form, const ByteSink& sink) {
    for (std::size_t c = 0; c < recording.channels.size(); ++c) {
        const std::vector<double>& samples = recording.channels[c].samples;
        if (auto good = sink(kMark + kindOf(form, samples.size()) + headOf(recording, c)); !good) return good;
        for (std::size_t at = 0; at < samples.size(); at += kAtOnce) {
            const std::size_t until = std::min(at + kAtOnce, samples.size());
            const std::string piece =
                form == UffText::Columns ? columns(samples, at, until) : raw(samples, at, until);
            if (auto good = sink(piece); !good) return good;
        }
        if (auto good = sink(kMark); !good) return good;
    }
    return {};
}

}  // namespace fettle
