#include "core/signal/csv_reader.h"

#include <fmt/format.h>

#include <cmath>

#include "core/base/text.h"
#include "core/signal/csv_head.h"
#include "core/signal/csv_text.h"
#include "core/signal/csv_time.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {
// The table of numbers under the header.
class Table {
  public:
    Table(const CsvHead& head, const std::string& file)
        : head_(head), file_(file), samples_(head.columns.size()) {}
    Status read(CsvLines& lines);
    Result<double> rateHz() const;
    std::vector<Channel> channels(double sampleRateHz);
    char decimalMark() const { return mark_.mark(); }

  private:
    Status takeLine(std::string_view line, std::size_t number);
    Status takeField(std::size_t column, std::string_view field, std::size_t number);
    Status checkEnd(CsvLines& lines) const;
    tl::unexpected<Error> no(std::size_t line, std::size_t column, std::string rule) const {
        return fail(ErrorKind::Invalid, file_, csvPlace(line, column), std::move(rule));
    }

    const CsvHead& head_;
    const std::string& file_;
    CsvFields fields_;
    DecimalMark mark_;
    CsvTime time_;
    std::vector<std::vector<double>> samples_;  // by column; the time column stays empty
    std::uint64_t count_ = 0;
};

Status Table::read(CsvLines& lines) {
    const std::uint64_t most = kMostSamples / head_.columns.size();
    for (; !lines.atEnd() && !trimmed(lines.line()).empty(); lines.next()) {
        if (auto taken = takeLine(lines.line(), lines.number()); !taken) return taken;
        if (++count_ > most)
            return checkSampleCount(count_, head_.columns.size(), file_, csvPlace(lines.number(), 1));
    }
    return checkEnd(lines);
}

Status Table::takeLine(std::string_view line, std::size_t number) {
    const std::size_t wanted = head_.columns.size();
    if (!fields_.split(line, head_.separator, wanted + 1))
        return no(number, fields_.count(), "a quote that is not closed, or text behind a quote");
    for (std::size_t i = 0; i < std::min(fields_.count(), wanted); ++i)
        if (auto taken = takeField(i, fields_[i], number); !taken) return taken;
    if (fields_.count() < wanted)
        return no(number, fields_.count() + 1,
                  fmt::format("the column is missing: the header names {} columns, this line has {}", wanted,
                              fields_.count()));
    if (fields_.count() > wanted)
        return no(number, wanted + 1,
                  fmt::format("one column too many: the header names {} columns", wanted));
    return {};
}

Status Table::takeField(std::size_t column, std::string_view field, std::size_t number) {
    const auto value = mark_.parse(field);
    if (!value) return no(number, column + 1, mark_.complaint(field));
    if (!(std::abs(*value) <= kLargestSample))
        return no(
            number, column + 1,
            fmt::format("is {}, must be a finite number within +-{}", oneLine(field, 40), kLargestSample));
    if (head_.columns[column].isTime())
        time_.add(*value, field);
    else
        samples_[column].push_back(*value);
    return {};
}

// Empty lines may stand at the end only.
Status Table::checkEnd(CsvLines& lines) const {
    const std::size_t end = lines.number();
    for (; !lines.atEnd(); lines.next())
        if (!trimmed(lines.line()).empty()) return no(end, 1, "an empty line between numbers");
    if (auto good = checkSampleCount(count_, 1, file_, csvPlace(end, 1)); !good) return good;
    if (head_.samples && *head_.samples != count_)
        return fail(ErrorKind::Damaged, file_, csvPlace(head_.samplesLine, 2),
                    fmt::format("states {} samples, {} follow", *head_.samples, count_));
    return {};
}

Result<double> Table::rateHz() const {
    const auto column = head_.timeColumn();
    if (!column && head_.sampleRateHz) return *head_.sampleRateHz;
    if (!column)
        return no(
            head_.headerLine, 1,
            "no sample rate: a line `# sample_rate_hz: N` above the header or a column `time [s]` is needed");
    auto told = time_.rateHz(head_.columns[*column].secondsPerUnit, file_, head_.headerLine + 1, *column + 1);
    if (!told || !head_.sampleRateHz) return told;
    if (std::abs(*told / *head_.sampleRateHz - 1) > 0.01)
        return no(head_.headerLine, *column + 1,
                  fmt::format("the times tell {} Hz, sample_rate_hz states {}", *told, *head_.sampleRateHz));
    return *head_.sampleRateHz;
}

std::vector<Channel> Table::channels(double sampleRateHz) {
    std::vector<Channel> channels;
    for (std::size_t i = 0; i < head_.columns.size(); ++i) {
        if (head_.columns[i].isTime()) continue;
        Channel& channel = channels.emplace_back();
        channel.name = head_.columns[i].name;
        channel.unit = head_.columns[i].unit;
        channel.sampleRateHz = sampleRateHz;
        channel.samples = std::move(samples_[i]);
        channel.samples.shrink_to_fit();
    }
    return channels;
}

std::string dialectSentence(const CsvHead& head, char mark, const std::string& file) {
    const char* fields = head.separator == '\t'  ? "fields parted by tab"
                         : head.separator == ';' ? "fields parted by ;"
                         : head.separator == ',' ? "fields parted by ,"
                                                 : "one field a line";
    const char* marks = mark == ','   ? "decimal comma"
                        : mark == '.' ? "decimal point"
                                      : "no decimal mark in any number";
    return fmt::format("{}: read as CSV with {}, {}", oneLine(file), fields, marks);
}
}  // namespace

Result<Recording> readCsv(const std::string& bytes, const std::string& file) {
    if (auto good = checkCsvText(bytes, file); !good) return fail(good.error());
    CsvLines lines(bytes);
    auto head = readCsvHead(lines, file);
    if (!head) return fail(head.error());
    Table table(*head, file);
    if (auto read = table.read(lines); !read) return fail(read.error());
    const auto rate = table.rateHz();
    if (!rate) return fail(rate.error());
    Recording recording = std::move(head->facts);
    recording.file = file;
    recording.channels = table.channels(*rate);
    recording.warnings.push_back(dialectSentence(*head, table.decimalMark(), file));
    if (!head->sampleRateHz)
        recording.warnings.push_back(
            fmt::format("{}: sample rate {} Hz taken from the time column", oneLine(file), *rate));
    return recording;
}

}  // namespace fettle
