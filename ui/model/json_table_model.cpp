#include "ui/model/json_table_model.h"

#include "ui/model/words.h"

namespace fettle {

JsonTableModel::JsonTableModel(MachineDocument& document, std::unique_ptr<TableRows> rows,
                               std::vector<FieldSpec> columns, QObject* parent)
    : QAbstractTableModel(parent),
      document_(document),
      source_(std::move(rows)),
      columns_(std::move(columns)) {
    connect(&document, &MachineDocument::edited, this, &JsonTableModel::refresh);
    refresh();
}

// The same rows keep their selection and editors; others begin anew.
void JsonTableModel::refresh() {
    auto rows = source_->rows(document_);
    const auto alike = [](const TableRow& a, const TableRow& b) { return a.pointer == b.pointer; };
    if (rows.size() == rows_.size() && std::equal(rows.begin(), rows.end(), rows_.begin(), alike)) {
        rows_ = std::move(rows);
        if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

void JsonTableModel::setReadOnly(bool readOnly) {
    readOnly_ = readOnly;
}

QStringList JsonTableModel::choices(int column) const {
    const FieldSpec& spec = columns_[std::size_t(column)];
    return spec.words.isEmpty() ? source_->choices(document_, spec.pointer) : spec.words;
}

std::string JsonTableModel::pointerOf(int row, int column) const {
    return rows_[std::size_t(row)].pointer + columns_[std::size_t(column)].pointer;
}

// What is wrong with the row as a whole stands in its first column.
QString JsonTableModel::troubleOf(int row, int column) const {
    if (!isSpecial(column)) return document_.troubleAt(pointerOf(row, column));
    for (const Trouble& trouble : document_.troubles())
        if (column == 0 && trouble.place == rows_[std::size_t(row)].pointer) return shown(trouble.rule);
    return {};
}

QStringList JsonTableModel::troubles() const {
    QStringList all;
    for (int row = 0; row < rowCount(); ++row) {
        const std::string& pointer = rows_[std::size_t(row)].pointer;
        for (const Trouble& trouble : document_.troubles()) {
            if (trouble.place != pointer && trouble.place.rfind(pointer + "/", 0) != 0) continue;
            const std::string rest = trouble.place.substr(pointer.size());
            if (rest.rfind("/channels", 0) == 0 || rest.rfind("/node", 0) == 0 ||
                rest.rfind("/bearings", 0) == 0)
                continue;  // has a table of its own
            all << tr("line %1%2: %3").arg(row + 1).arg(shown(rest).replace(u'/', u' '), shown(trouble.rule));
        }
    }
    return all;
}

const TableRow* JsonTableModel::row(int index) const {
    return index >= 0 && index < int(rows_.size()) ? &rows_[std::size_t(index)] : nullptr;
}

int JsonTableModel::add(int besideRow) {
    const TableRow* beside =
        besideRow >= 0 && besideRow < int(rows_.size()) ? &rows_[std::size_t(besideRow)] : nullptr;
    const std::vector<TableRow> before = rows_;
    source_->add(document_, beside);
    for (int row = 0; row < rowCount(); ++row)
        if (row >= int(before.size()) || before[std::size_t(row)].pointer != rows_[std::size_t(row)].pointer)
            return row;
    return rowCount() - 1;
}

void JsonTableModel::remove(int row) {
    if (row < 0 || row >= rowCount()) return;
    const std::string pointer = rows_[std::size_t(row)].pointer;
    document_.remove(pointer);
}

int JsonTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(rows_.size());
}

int JsonTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(columns_.size());
}

QVariant JsonTableModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const FieldSpec& spec = columns_[std::size_t(index.column())];
    if (role == Qt::DisplayRole || role == Qt::EditRole)
        return isSpecial(index.column())
                   ? source_->special(document_, rows_[std::size_t(index.row())], spec.pointer)
                   : document_.text(pointerOf(index.row(), index.column()));
    if (role == Qt::ToolTipRole) {
        const QString trouble = troubleOf(index.row(), index.column());
        return trouble.isEmpty() ? spec.hint : trouble;
    }
    if (role == Qt::TextAlignmentRole && spec.kind == FieldKind::Number)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

bool JsonTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole) return false;
    const FieldSpec& spec = columns_[std::size_t(index.column())];
    if (isSpecial(index.column()))
        return source_->setSpecial(document_, TableRow(rows_[std::size_t(index.row())]), spec.pointer,
                                   value.toString());
    document_.setText(pointerOf(index.row(), index.column()), value.toString(), spec.kind);
    document_.endTyping();
    return true;
}

QVariant JsonTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical || section < 0 || section >= columnCount()) return {};
    const FieldSpec& spec = columns_[std::size_t(section)];
    if (role == Qt::DisplayRole)
        return spec.unit.isEmpty() ? spec.label : QStringLiteral("%1, %2").arg(spec.label, spec.unit);
    if (role == Qt::ToolTipRole) return spec.hint;
    if (role == Qt::TextAlignmentRole)
        return QVariant((spec.kind == FieldKind::Number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    return {};
}

Qt::ItemFlags JsonTableModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    const std::string& pointer = columns_[std::size_t(index.column())].pointer;
    const bool workedOut = pointer == "@known" || pointer == "@speed";
    const auto base = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return readOnly_ || workedOut ? base : base | Qt::ItemIsEditable;
}

}  // namespace fettle
