#include "app/cli/export_trends.h"

#include <fmt/format.h>

#include <array>
#include <map>

#include "core/exchange/csv_cell.h"

namespace fettle {

namespace {

struct Row {
    std::string running;
    std::array<std::string, kQuantities> values;
};

// By time and recording.
using Rows = std::map<std::pair<Instant, std::int64_t>, Row>;

Result<Rows> rowsOf(FleetFile& fleet, const ChannelEntry& channel, Instant from, Instant until) {
    Rows rows;
    for (std::size_t q = 0; q < kQuantities; ++q) {
        const auto trend = fleet.trends().trend(channel.id, Quantity(q), from, until);
        if (!trend) return fail(trend.error());
        for (const TrendPoint& point : *trend) {
            Row& row = rows[{point.time, point.recording}];
            row.running = point.running;
            row.values[q] = fmt::format("{}", point.value);
        }
    }
    return rows;
}

std::string lineOf(const Rows::key_type& key, const std::string& about, const Row& row) {
    std::string line = fmt::format("{},{},{}{}", formatUtc(key.first), key.second, about, row.running);
    for (const std::string& value : row.values)
        line += "," + value;
    return line + kCsvEnd;
}

}  // namespace

std::string trendCsvHeader() {
    std::string line = "time,recording,machine,point,channel,direction,quantity,unit,running";
    for (std::size_t q = 0; q < kQuantities; ++q)
        line += std::string(",") + columnOf(Quantity(q));
    return line + kCsvEnd;
}

Result<std::size_t> writeTrends(FleetFile& fleet, const MachineEntry& machine, const ExportSpan& span,
                                OutFile& out) {
    const auto channels = fleet.trends().channels(machine.id);
    if (!channels) return fail(channels.error());
    std::size_t count = 0;
    for (const ChannelEntry& channel : *channels) {
        std::string about;
        for (const std::string& text :
             {machine.tag, channel.point, channel.name, channel.direction, channel.quantity, channel.unit})
            about += csvCell(text) + ",";
        const auto month = [&](Instant from, Instant until) -> Status {
            const auto rows = rowsOf(fleet, channel, from, until);
            if (!rows) return fail(rows.error());
            for (const auto& [key, row] : *rows)
                out.add(lineOf(key, about, row));
            count += rows->size();
            return {};
        };
        if (auto good = monthByMonth(fleet, machine, span, month); !good) return fail(good.error());
    }
    return count;
}

}  // namespace fettle
