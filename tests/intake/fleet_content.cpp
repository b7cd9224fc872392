#include "tests/intake/fleet_content.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>
#include <functional>

#include "core/base/file_system.h"
#include "core/base/text.h"
#include "core/store/database.h"

namespace fettle::intake_test {

namespace {

template <class Value>
Value orFail(Result<Value> result) {
    EXPECT_TRUE(result) << (result ? "" : result.error().sentence());
    return result ? std::move(*result) : Value{};
}

std::string bytesOf(const std::vector<double>& samples) {
    std::string bytes(samples.size() * sizeof(double), '\0');
    std::memcpy(bytes.data(), samples.data(), bytes.size());
    return bytes;
}

std::string shortOf(const std::string& bytes) {
    return fmt::format("{}:{:016x}", bytes.size(), std::hash<std::string>{}(bytes));
}

const Instant kFirst = parseUtc("1970-01-01T00:00:00Z").value(),
              kLast = parseUtc("2100-01-01T00:00:00Z").value();

std::vector<RecordingEntry> entriesOf(FleetFile& fleet) {
    std::vector<RecordingEntry> all;
    for (const MachineEntry& machine : orFail(fleet.machines().all()))
        for (RecordingEntry& entry : orFail(fleet.recordings().list(machine.id, kFirst, kLast)))
            all.push_back(std::move(entry));
    return all;
}

std::string weightsOf(FleetFile& fleet, const RecordingEntry& entry) {
    std::vector<std::string> rows;
    for (const WeightEntry& weight :
         orFail(fleet.recordings().weights(entry.machine, entry.time, entry.time)))
        if (weight.recording == entry.id)
            rows.push_back(fmt::format("{}@{}={}", weight.fault, weight.at, weight.weightDban));
    std::sort(rows.begin(), rows.end());
    return joined(rows, ",");
}

std::string trendsOf(FleetFile& fleet, const RecordingEntry& entry) {
    std::string text;
    for (const ChannelEntry& channel : orFail(fleet.trends().channels(entry.machine))) {
        for (std::size_t q = 0; q < kQuantities; ++q)
            for (const TrendPoint& point :
                 orFail(fleet.trends().trend(channel.id, Quantity(q), entry.time, entry.time)))
                if (point.recording == entry.id)
                    text += fmt::format("{} {} {}={};", channel.point, channel.name, q, point.value);
        for (const WaterfallKind kind :
             {WaterfallKind::Velocity, WaterfallKind::Acceleration, WaterfallKind::Envelope})
            for (const SpectrumAt& spectrum :
                 orFail(fleet.trends().spectra(channel.id, kind, entry.time, entry.time)))
                if (spectrum.recording == entry.id)
                    text += fmt::format("{} {} {}: {};", channel.name, int(kind), spectrum.topHz,
                                        bytesOf({spectrum.lines.begin(), spectrum.lines.end()}));
    }
    for (const MeasureSeries& series : orFail(fleet.trends().measures(entry.machine)))
        for (const TrendPoint& point : orFail(fleet.trends().measured(series, entry.time, entry.time)))
            if (point.recording == entry.id)
                text += fmt::format("{} {} {} {} {}={};", series.point, series.channelName, series.fault,
                                    series.at, series.name, point.value);
    return text;
}

}  // namespace

std::vector<std::string> contentOf(FleetFile& fleet) {
    std::vector<std::string> all;
    for (const RecordingEntry& entry : entriesOf(fleet)) {
        const auto recording = orFail(fleet.recordings().recording(entry.id));
        std::string samples;
        if (recording)
            for (const Channel& channel : recording->channels)
                samples += channel.name + channel.unit + bytesOf(channel.samples);
        all.push_back(
            fmt::format("{} {} {} late={} samples {} sidecar {} examination {} weights {} levels {}",
                        fileNameOf(entry.file), formatUtc(entry.time), entry.running, entry.late,
                        shortOf(samples), shortOf(orFail(fleet.recordings().sidecar(entry.id))),
                        shortOf(orFail(fleet.recordings().examinationJson(entry.id))),
                        shortOf(weightsOf(fleet, entry)), shortOf(trendsOf(fleet, entry))));
    }
    std::sort(all.begin(), all.end());
    return all;
}

std::vector<std::string> tablesOf(const std::string& path) {
    const auto database = orFail(Database::open(path, Access::ReadOnly));
    const auto texts = [&](const std::string& sql, const std::string& value) {
        Statement rows(*database, sql);
        auto all = orFail(allRows<std::string>(value.empty() ? rows : rows.bind(value),
                                               [](Statement& row, std::string& text) { row.into(text); }));
        return all;
    };
    std::vector<std::string> all;
    for (const std::string& table :
         texts("SELECT name FROM sqlite_schema WHERE type='table' AND name NOT LIKE 'sqlite%' ORDER BY 1",
               "")) {
        std::string row = "'" + table + "'";
        for (const std::string& column :
             texts("SELECT name FROM pragma_table_info(?) WHERE name <> 'imported' ORDER BY cid", table))
            row += " || '|' || quote(\"" + column + "\")";
        const auto rows = texts("SELECT " + row + " FROM \"" + table + "\"", "");
        all.insert(all.end(), rows.begin(), rows.end());
    }
    return all;
}

std::vector<std::string> filesIn(FleetFile& fleet) {
    std::vector<std::string> names;
    for (const RecordingEntry& entry : entriesOf(fleet))
        names.push_back(fileNameOf(entry.file));
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace fettle::intake_test
