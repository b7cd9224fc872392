#include "ui/plot/waterfall_table.h"

#include <QBuffer>
#include <array>
#include <charconv>
#include <cmath>

#include "core/base/time.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall_words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr std::size_t kMostCopied = 2'000'000;  // cells
constexpr int kDigits = 6;

void add(QByteArray& line, double value) {
    std::array<char, 32> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, kDigits);
    line.append(text.data(), qsizetype(end.ptr - text.data()));
}

QByteArray columnsOf(const WaterfallTable& table, char separator) {
    const WaterfallData& data = *table.data;
    QByteArray line("time UTC");
    line.append(separator).append("shaft Hz");
    const char* unit = data.options().orders ? " orders" : " Hz";
    for (std::size_t i = table.lines.first; i < table.lines.last; ++i) {
        line.append(separator);
        add(line, (double(i) + 0.5) * data.top() / double(data.lines()));
        line.append(unit);
    }
    return line.append('\n');
}

QByteArray rowOf(const WaterfallTable& table, std::size_t row, char separator) {
    const WaterfallData& data = *table.data;
    QByteArray line = QByteArray::fromStdString(formatUtc(toInstant(data.ms(row))));
    line.append(separator);
    if (data.shaftHz(row) > 0) add(line, data.shaftHz(row));
    for (std::size_t i = table.lines.first; i < table.lines.last; ++i) {
        const double value = double(data.cell(row, i));
        line.append(separator);
        if (value < 0 || (data.options().decibels && value == 0)) continue;
        add(line, data.options().decibels ? 20 * std::log10(value) : value);
    }
    return line.append('\n');
}

QString headOf(const WaterfallData& data, TableExtent extent, const QString& caption) {
    QString head = QStringLiteral("# %1\n# %2\n")
                       .arg(caption, extent == TableExtent::All ? tr("all data") : tr("as shown"));
    head += QStringLiteral("# %1\n").arg(tr("one row a spectrum, in %1; columns are the middles of its lines")
                                             .arg(QString::fromStdString(data.options().unit)));
    if (const QString words = completeness(data); !words.isEmpty())
        head += QStringLiteral("# %1\n").arg(words);
    return head;
}

}  // namespace

bool WaterfallTable::write(QIODevice& to, char separator) const {
    const auto put = [&to](const QByteArray& bytes) { return to.write(bytes) == bytes.size(); };
    QString first = head;
    if (separator == ',') first = asCsv(first);
    if (!put(first.toUtf8()) || !put(columnsOf(*this, separator))) return false;
    for (std::size_t row = rows.first; row < rows.last; ++row)
        if (!put(rowOf(*this, row, separator))) return false;
    return true;
}

WaterfallTable waterfallTable(std::shared_ptr<const WaterfallData> data, TableExtent extent,
                              const std::pair<double, double>& time, const std::pair<double, double>& upright,
                              const QString& caption) {
    WaterfallTable table;
    if (!data || data->rows() == 0) return table;
    const bool all = extent == TableExtent::All;
    table.rows = all ? WaterfallData::Part{0, data->rows()} : data->rowsWithin(time.first, time.second);
    table.lines =
        all ? WaterfallData::Part{0, data->lines()} : data->linesWithin(upright.first, upright.second);
    table.head = headOf(*data, extent, caption);
    table.data = std::move(data);
    return table;
}

QString clipboardText(const WaterfallTable& table) {
    if (!table.data || table.cells() > kMostCopied) return {};
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    table.write(buffer, '\t');
    return QString::fromUtf8(buffer.data());
}

TableWriter writerOf(WaterfallTable table) {
    if (!table.data) return {};
    return [table = std::move(table)](QIODevice& file) { return table.write(file, ','); };
}

}  // namespace fettle
