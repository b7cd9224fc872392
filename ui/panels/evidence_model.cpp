#include "ui/panels/evidence_model.h"

#include <QFont>
#include <QIcon>
#include <QPainter>
#include <QPixmap>
#include <algorithm>

#include "ui/model/numbers.h"
#include "ui/plot/line_marks.h"

namespace fettle {

namespace {

constexpr int kSymbolPx = 14;

MarkKind markOf(LineState state) {
    return state == LineState::Found    ? MarkKind::Found
           : state == LineState::Absent ? MarkKind::Absent
                                        : MarkKind::LeftOut;
}

QIcon symbolOf(const Theme& theme, LineState state) {
    QPixmap pixmap(2 * kSymbolPx, 2 * kSymbolPx);
    pixmap.setDevicePixelRatio(2);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMark(painter, theme, markOf(state), QPointF(kSymbolPx / 2.0, kSymbolPx * 0.8), kSymbolPx * 0.6);
    painter.end();
    QIcon icon(pixmap);
    icon.addPixmap(pixmap, QIcon::Selected);
    return icon;
}

QString fixed(double value, int decimals) {
    return fixedText(value, decimals);
}

}  // namespace

EvidenceModel::EvidenceModel(const Theme& theme, QObject* parent)
    : QAbstractTableModel(parent), theme_(theme) {}

void EvidenceModel::setRows(ArithmeticRows rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

void EvidenceModel::setUnits(const Units& units) {
    units_ = units;
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
    emit headerDataChanged(Qt::Horizontal, 0, kColumns - 1);
}

QString EvidenceModel::asTable() const {
    QStringList lines;
    for (int row = -1; row < rowCount(); ++row) {
        QStringList cells;
        for (int column = 0; column < Bar; ++column)
            cells << (row < 0 ? headerData(column, Qt::Horizontal, Qt::DisplayRole)
                              : data(index(row, column), Qt::DisplayRole))
                         .toString();
        lines << cells.join(u'\t');
    }
    return lines.join(u'\n') + u'\n';
}

double EvidenceModel::mostOfLines() const {
    double most = 1;
    for (const ArithmeticRow& row : rows_)
        if (row.kind != ArithmeticRow::Kind::Weight) most = std::max(most, row.printed);
    return most;
}

double EvidenceModel::leastOfLines() const {
    double least = -1;
    for (const ArithmeticRow& row : rows_)
        if (row.kind != ArithmeticRow::Kind::Weight) least = std::min(least, row.printed);
    return least;
}

int EvidenceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(rows_.size());
}

int EvidenceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(kColumns);
}

QString EvidenceModel::frequency(double hz) const {
    const ShownUnit to = shownUnit(QStringLiteral("Hz"), units_);
    return fixed(to.shown(hz), units_.perMinute ? 0 : 2);
}

// By their place: printed values of all rows up to this one; the weight is what they sum to.
double EvidenceModel::sumTo(const ArithmeticRow& row) const {
    double sum = 0;
    for (const ArithmeticRow& one : rows_) {
        if (one.kind == ArithmeticRow::Kind::Weight) break;
        sum += one.printed;
        if (&one == &row) break;
    }
    return sum;
}

QString EvidenceModel::lineText(const LineRow& line, int column) const {
    const bool judged = line.state != LineState::LeftOut;
    switch (column) {
        case Order:
            return fixed(line.order, 3);
        case Expected:
            return frequency(line.expectedHz);
        case Found:
            return line.state == LineState::Found ? frequency(line.foundHz)
                   : judged                       ? tr("absent")
                                                  : tr("left out");
        case Db:
            return judged ? fixed(line.aboveFloorDb, 1) : QString();
        case RankP:
            return judged ? QString::number(line.rankP, 'g', 2) : QString();
        case Share:
            return judged ? fixed(line.w, 2) : QString();
        default:
            return {};
    }
}

QString EvidenceModel::textOf(const ArithmeticRow& row, int column) const {
    if (column == Decibans) return fixed(row.printed, 1);
    if (column == Sum) return fixed(sumTo(row), 1);
    if (column == Name) return QString::fromStdString(row.name);
    return row.kind == ArithmeticRow::Kind::Line ? lineText(*row.line, column) : QString();
}

QString EvidenceModel::helpOf(const ArithmeticRow& row) const {
    switch (row.kind) {
        case ArithmeticRow::Kind::Search:
            return tr(
                "What the search over views, shifts and variants costs or brings back; takes up the "
                "rounding of the rows above");
        case ArithmeticRow::Kind::Mean:
            return tr("From the strongest recording, whose lines are shown, to the mean e-value of all");
        case ArithmeticRow::Kind::Weight:
            return tr("The sum of the rows: how unlike chance, not the odds that the fault is there");
        case ArithmeticRow::Kind::Line:
            break;
    }
    if (row.line->state == LineState::LeftOut)
        return tr("left out: %1").arg(QString::fromStdString(row.line->why));
    const QString unit = shownUnit(QStringLiteral("Hz"), units_).unit;
    return tr("%1; expected %2 %6, top of the peak %3 %6; rank p %4; %5 of true faults show this line")
        .arg(QString::fromStdString(toText(row.line->state)), frequency(row.line->expectedHz),
             frequency(row.line->foundHz), QString::number(row.line->rankP, 'g', 2), fixed(row.line->w, 2),
             unit);
}

// For a screen reader: a cell says what it is of.
QString EvidenceModel::spoken(const ArithmeticRow& row, int column) const {
    const bool line = row.kind == ArithmeticRow::Kind::Line;
    if (column == Name && line)
        return tr("%1, %2, %3 decibans")
            .arg(textOf(row, Name), QString::fromStdString(toText(row.line->state)), textOf(row, Decibans));
    if (column == Name) return tr("%1, %2 decibans").arg(textOf(row, Name), textOf(row, Decibans));
    if (column == Bar) return row.printed < 0 ? tr("against") : row.printed > 0 ? tr("for") : tr("neutral");
    return textOf(row, column);
}

QVariant EvidenceModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const ArithmeticRow& row = rows_[std::size_t(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return textOf(row, index.column());
        case Qt::ToolTipRole:
            return helpOf(row);
        case Qt::AccessibleTextRole:
            return spoken(row, index.column());
        case Qt::TextAlignmentRole:
            return int((index.column() == Name ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
        case Qt::DecorationRole:
            if (index.column() == Name && row.kind == ArithmeticRow::Kind::Line)
                return symbolOf(theme_, row.line->state);
            return {};
        case Qt::FontRole: {
            QFont font;
            font.setBold(row.kind == ArithmeticRow::Kind::Weight);
            return font;
        }
        case Qt::ForegroundRole:
            return theme_.colour(row.kind == ArithmeticRow::Kind::Line &&
                                         row.line->state == LineState::LeftOut
                                     ? Role::MutedInk
                                     : Role::Ink);
        default:
            return {};
    }
}

QVariant EvidenceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return int((section == Name ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    const QString unit = shownUnit(QStringLiteral("Hz"), units_).unit;
    const QString heads[] = {tr("line"),
                             tr("order"),
                             tr("expected %1").arg(unit),
                             tr("found %1").arg(unit),
                             tr("dB over"),
                             tr("rank p"),
                             tr("w"),
                             tr("decibans"),
                             tr("sum"),
                             QString()};
    const QString helps[] = {tr("Expected line; full triangle found, open one absent, cross left out"),
                             tr("Order of the bearing's own shaft"),
                             tr("Where the line was expected at the fitted slip, %1").arg(unit),
                             tr("Top of the peak, %1; or absent, or left out").arg(unit),
                             tr("Power over the local floor, dB"),
                             tr("Share of the view's positions that are as high"),
                             tr("Share of true faults that show this line"),
                             tr("What the line added or took away, decibans"),
                             tr("Running sum down to the weight, decibans"),
                             tr("Against to the left, for to the right of the zero line")};
    if (role == Qt::DisplayRole) return heads[section];
    if (role == Qt::ToolTipRole) return helps[section];
    return {};
}

EvidenceBars::EvidenceBars(const Theme& theme, const EvidenceModel& model, QObject* parent)
    : QStyledItemDelegate(parent), theme_(theme), model_(model) {}

void EvidenceBars::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    QStyledItemDelegate::paint(painter, option, index);
    const ArithmeticRow& row = model_.rows()[std::size_t(index.row())];
    painter->save();
    painter->setPen(QPen(theme_.colour(Role::MutedInk), 1));
    if (row.kind == ArithmeticRow::Kind::Weight)
        painter->drawLine(option.rect.topLeft(), option.rect.topRight());
    else if (index.column() == EvidenceModel::Bar)
        paintBar(*painter, row, option.rect);
    painter->restore();
}

void EvidenceBars::paintBar(QPainter& painter, const ArithmeticRow& row, const QRect& in) const {
    const QRectF cell = QRectF(in).adjusted(4, 0, -4, 0);
    const double most = model_.mostOfLines(), least = model_.leastOfLines();
    const double perDeciban = cell.width() / (most - least), zero = cell.left() - least * perDeciban;
    painter.drawLine(QPointF(zero, in.top()), QPointF(zero, in.bottom() + 1));
    if (row.printed == 0) return;
    const double length = row.printed * perDeciban, high = cell.height() * 0.46;
    const QRectF bar(std::min(zero, zero + length), cell.center().y() - high / 2, std::abs(length), high);
    const QColor ink = theme_.colour(row.printed > 0 ? Role::For : Role::Against);
    const bool line = row.kind == ArithmeticRow::Kind::Line;
    painter.fillRect(bar, QBrush(ink, line ? Qt::SolidPattern : Qt::Dense4Pattern));
}

}  // namespace fettle
