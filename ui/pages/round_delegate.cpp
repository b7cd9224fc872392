#include "ui/pages/round_delegate.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/model/words.h"
#include "ui/theme/urgency_disc.h"

namespace fettle {

namespace {

constexpr int kMargin = 8;
constexpr int kRoom = 2 * kMargin + 2;  // about words: margins, and the grid
constexpr std::size_t kWeeks = 26;

QFont bold(QFont font) {
    font.setWeight(QFont::DemiBold);
    return font;
}

QRectF stripPlace(const QRectF& cell, const QFontMetrics& metrics) {
    const double numbers = metrics.horizontalAdvance(QStringLiteral("00.00 mm/s")) + kMargin;
    return cell.adjusted(kMargin, kMargin, -numbers - kMargin, -kMargin);
}

int widestOf(const QFontMetrics& metrics, const QStringList& words) {
    int widest = 0;
    for (const QString& word : words)
        widest = std::max(widest, metrics.horizontalAdvance(word));
    return widest;
}

QStringList urgencyWords() {
    QStringList words;
    for (const char* urgency : {"act", "plan", "watch", "unseen", "leave"})
        words << urgencyWord(urgency);
    return words;
}

QString deferredText() {
    Decision decision;
    decision.kind = DecisionKind::Defer;
    decision.deferTo = "2026-09-24";
    return decisionText(decision);
}

// Highest value the strip has to hold.
double topOf(const RoundMachine& machine) {
    double top = machine.limit.value_or(0) * 1.15;
    for (const double value : machine.strip)
        if (std::isfinite(value)) top = std::max(top, value * 1.05);
    return top > 0 ? top : 1;
}

void paintRuns(QPainter& painter, const std::vector<double>& strip, const QRectF& in, double top) {
    const double step = in.width() / double(kWeeks - 1);
    const double first = in.right() - step * (double(strip.size()) - 1);
    QPolygonF run;
    const auto flush = [&] {
        if (run.size() == 1) painter.drawPoint(run.first());
        if (run.size() > 1) painter.drawPolyline(run);
        run.clear();
    };
    for (std::size_t i = 0; i < strip.size(); ++i) {
        if (std::isfinite(strip[i]))
            run << QPointF(first + step * double(i), in.bottom() - in.height() * strip[i] / top);
        else
            flush();
    }
    flush();
}

}  // namespace

int RoundDelegate::lineHeight(const QFontMetrics& metrics) {
    return 2 * metrics.height() + 10;
}

int RoundDelegate::groupLineHeight(const QFontMetrics& metrics) {
    return metrics.height() + 18;
}

int RoundDelegate::columnWidth(const QFontMetrics& metrics, int column) {
    const auto wide = [&](const char* text) {
        return metrics.horizontalAdvance(QString::fromLatin1(text)) + 2 * kMargin;
    };
    switch (column) {
        case LedgerModel::Urgency:
            return metrics.height() + 3 * kMargin + widestOf(metrics, urgencyWords());
        case LedgerModel::Name:
            return wide("quarry dewatering pump, hydration");
        case LedgerModel::Strip:
            return wide("00.00 mm/s") + int(kWeeks) * metrics.height() / 3;
        case LedgerModel::Weight:
            return widestOf(metrics, LedgerModel::listedWords()) + kRoom;
        case LedgerModel::Age:
            return metrics.horizontalAdvance(ageText({}, Instant{} + 99 * std::chrono::weeks(1))) + kRoom;
        case LedgerModel::Decided:
            return metrics.horizontalAdvance(deferredText()) + kRoom;
        default:
            return 0;
    }
}

void RoundDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool selected = option.state & QStyle::State_Selected;
    painter->fillRect(option.rect, theme_.colour(selected ? Role::AccentGround : Role::Ground));
    painter->setPen(QPen(theme_.colour(Role::Rule), 1));
    const double under = option.rect.bottom() + 0.5;
    painter->drawLine(QPointF(option.rect.left(), under), QPointF(option.rect.right() + 1, under));
    if (const RoundMachine* machine = model_.machineAt(index.row()))
        paintMachine(*painter, option, *machine, index.column());
    else if (index.column() == 0)
        paintGroup(*painter, option, index.row());
    painter->restore();
}

void RoundDelegate::paintGroup(QPainter& painter, const QStyleOptionViewItem& option, int row) const {
    const std::string group = model_.groupAt(row);
    const QFontMetrics metrics(option.font);
    QRect place = option.rect.adjusted(kMargin, kMargin, -kMargin, -2);
    if (model_.grouping() == LedgerModel::ByUrgency) {
        const int disc = metrics.height();
        paintUrgencyDisc(painter, QRectF(place.left(), place.center().y() - disc / 2.0 + 1, disc, disc),
                         urgencyOf(group), theme_.colour(Role::Accent));
        place.setLeft(place.left() + disc + kMargin);
    }
    painter.setFont(bold(option.font));
    painter.setPen(theme_.colour(Role::Ink));
    QRect used;
    painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, model_.groupTitle(group), &used);
    place.setLeft(used.right() + 2 * kMargin);
    painter.setFont(option.font);
    painter.setPen(theme_.colour(Role::MutedInk));
    const QString text = model_.groupText(group);
    painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter,
                     model_.folded(group) ? tr("%1  (folded, G unfolds)").arg(text) : text);
}

void RoundDelegate::paintMachine(QPainter& painter, const QStyleOptionViewItem& option,
                                 const RoundMachine& machine, int column) const {
    const QString text =
        model_.data(model_.index(model_.rowOf(machine.tag), column), Qt::DisplayRole).toString();
    if (column == LedgerModel::Urgency) return paintUrgency(painter, option, machine);
    if (column == LedgerModel::Strip) return paintStrip(painter, option, machine);
    QString upper = text.section(u'\n', 0, 0), lower = text.section(u'\n', 1);
    if (column == LedgerModel::Decided && !model_.settled(machine)) std::swap(upper, lower);
    paintTwoLines(painter, option, upper, lower, column);
}

// Both lines; one alone stands in the middle.
void RoundDelegate::paintTwoLines(QPainter& painter, const QStyleOptionViewItem& option, const QString& upper,
                                  const QString& lower, int column) const {
    const QRect place = option.rect.adjusted(kMargin, 0, -kMargin, 0);
    const QFont font = column == LedgerModel::Name ? bold(option.font) : option.font;
    const int align =
        int(column == LedgerModel::Weight ? Qt::AlignRight : Qt::AlignLeft) | int(Qt::AlignVCenter);
    const QFontMetrics metrics(font);
    const bool two = !upper.isEmpty() && !lower.isEmpty();
    const int top = place.center().y() - (two ? metrics.height() : metrics.height() / 2);
    if (!upper.isEmpty()) {
        painter.setFont(font);
        painter.setPen(theme_.colour(Role::Ink));
        painter.drawText(QRect(place.left(), top, place.width(), metrics.height()), align,
                         metrics.elidedText(upper, Qt::ElideRight, place.width()));
    }
    if (lower.isEmpty()) return;
    painter.setFont(option.font);
    painter.setPen(theme_.colour(Role::MutedInk));
    const QRect line(place.left(), two ? top + metrics.height() : top, place.width(), metrics.height());
    painter.drawText(line, align, QFontMetrics(option.font).elidedText(lower, Qt::ElideRight, place.width()));
}

void RoundDelegate::paintStrip(QPainter& painter, const QStyleOptionViewItem& option,
                               const RoundMachine& machine) const {
    if (machine.strip.empty()) return;
    const QFontMetrics metrics(option.font);
    const QRectF in = stripPlace(option.rect, metrics);
    const double top = topOf(machine);
    if (machine.limit) {
        const double y = in.bottom() - in.height() * *machine.limit / top;
        painter.setPen(QPen(theme_.colour(Role::Limit), 1, Qt::DashLine));
        painter.drawLine(QPointF(in.left(), y), QPointF(in.right(), y));
    }
    painter.setPen(QPen(theme_.colour(Role::Curve), 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    paintRuns(painter, machine.strip, in, top);
    const double last = machine.strip.back();
    const QRect numbers(int(in.right()) + kMargin, option.rect.top(),
                        option.rect.right() - int(in.right()) - 2 * kMargin, option.rect.height());
    if (std::isfinite(last)) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme_.colour(Role::Accent));
        painter.drawEllipse(QPointF(in.right(), in.bottom() - in.height() * last / top), 2.5, 2.5);
        painter.setPen(theme_.colour(Role::Ink));
        painter.drawText(numbers.adjusted(0, 0, 0, machine.limit ? -numbers.height() / 2 : 0),
                         int(machine.limit ? Qt::AlignBottom : Qt::AlignVCenter) | int(Qt::AlignLeft),
                         model_.levelText(machine));
    }
    if (!machine.limit) return;
    painter.setPen(theme_.colour(Role::MutedInk));
    painter.drawText(numbers.adjusted(0, numbers.height() / 2, 0, 0), Qt::AlignTop | Qt::AlignLeft,
                     tr("of %1").arg(model_.limitText(machine)));
}

void RoundDelegate::paintUrgency(QPainter& painter, const QStyleOptionViewItem& option,
                                 const RoundMachine& machine) const {
    const QFontMetrics metrics(option.font);
    const double size = metrics.height();
    const QRectF disc(option.rect.left() + kMargin, option.rect.center().y() - size / 2 + 0.5, size, size);
    paintUrgencyDisc(painter, disc, urgencyOf(machine.urgency), theme_.colour(Role::Accent));
    painter.setPen(theme_.colour(Role::Ink));
    QRect place = option.rect;
    place.setLeft(int(disc.right()) + kMargin);
    painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(urgencyWord(machine.urgency), Qt::ElideRight, place.width()));
}

}  // namespace fettle
