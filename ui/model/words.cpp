#include "ui/model/words.h"

#include <QDateTime>
#include <QLocale>
#include <QTimeZone>
#include <algorithm>
#include <cmath>

#include "ui/model/engine_words.h"
#include "ui/model/numbers.h"
#include "ui/theme/tr.h"
#include "ui/theme/urgency_disc.h"

namespace fettle {

namespace {

QString wordOf(const std::vector<Word>& words, const std::string& key) {
    const auto found = std::find_if(words.begin(), words.end(), [&](const Word& w) { return w.key == key; });
    return found == words.end() ? shown(key) : found->text;
}

QDateTime asDateTime(Instant time) {
    return QDateTime::fromMSecsSinceEpoch(time.time_since_epoch().count(), QTimeZone::utc());
}

}  // namespace

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

std::string kept(const QString& text) {
    return text.trimmed().toStdString();
}

QString sentence(const Error& error) {
    QString text = shown(error.sentence());
    if (text.isEmpty()) return text;
    if (error.file.empty()) text[0] = text[0].toUpper();
    if (!text.endsWith(u'.')) text += u'.';
    return text;
}

QString urgencyWord(const std::string& urgency) {
    return urgencyWord(urgencyOf(urgency));
}

const std::vector<Word>& unseenReasons() {
    static const std::vector<Word> words = {
        {"silent", tr("silent: the node sends nothing")},
        {"low_battery", tr("low battery")},
        {"poor_data", tr("poor data: recordings fail the sensor checks")},
        {"moved", tr("moved: the node is not on this machine")},
        {"idle", tr("idle: the machine does not run")},
        {"not_fitted", tr("not fitted: no node on this machine")},
        {"not_judged", tr("not judged: nothing to weigh, no limit applies")}};
    return words;
}

QString unseenReasonWord(const std::string& key) {
    return wordOf(unseenReasons(), key).section(u':', 0, 0);
}

const std::vector<Word>& eventKinds() {
    static const std::vector<Word> words = {{"note", tr("note")},
                                            {"repair", tr("repair")},
                                            {"greasing", tr("greasing")},
                                            {"part", tr("part replaced")},
                                            {"cleaning", tr("cleaning")},
                                            {"inspection", tr("inspection")},
                                            {"moved_node", tr("node moved")},
                                            {"low_battery", tr("node's battery low")},
                                            {"rebaseline", tr("new baseline from here")},
                                            {"other", tr("other")}};
    return words;
}

QString faultWords(const std::string& fault, const std::string& at) {
    const QString name = faultNameText(fault);
    return at.empty() ? name : tr("%1, %2").arg(name, shown(at));
}

QString counted(qsizetype count, const QString& one, const QString& several) {
    return QStringLiteral("%1 %2").arg(count).arg(count == 1 ? one : several);
}

QString dateFormat() {
    //: a date as it is written; see QDate::toString
    return tr("d MMMM yyyy");
}

QString dateText(const std::string& isoDate) {
    const QDate date = QDate::fromString(shown(isoDate), Qt::ISODate);
    return date.isValid() ? dateText(date) : shown(isoDate);
}

QString dateText(const QDate& date) {
    return QLocale().toString(date, dateFormat());
}

QString dateText(Instant time) {
    return dateText(asDateTime(time).date());
}

QString ageText(Instant from, Instant until) {
    const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(until - from).count();
    if (minutes < 1) return tr("now");
    if (minutes < 120) return tr("%1 min").arg(minutes);
    if (minutes < 48 * 60) return tr("%1 h").arg(minutes / 60);
    const auto days = minutes / (24 * 60);
    return days < 60 ? tr("%1 d").arg(days) : tr("%1 weeks").arg(days / 7);
}

QString decisionText(const Decision& decision) {
    QString text;
    if (decision.kind == DecisionKind::Accept) text = tr("accepted");
    if (decision.kind == DecisionKind::Withdraw) text = tr("undecided again");
    if (decision.kind == DecisionKind::Dispute) text = tr("disputed");
    if (decision.kind == DecisionKind::Defer) text = tr("deferred to %1").arg(dateText(decision.deferTo));
    return text;
}

QString weightText(const std::optional<double>& dban) {
    return dban ? fixedText(*dban, 1).replace(u'-', QChar(0x2212)) : QString();
}

QString numberText(double value) {
    if (!std::isfinite(value)) return {};
    const double size = std::abs(value);
    return fixedText(value, size >= 100 ? 0 : size >= 10 ? 1 : 2);
}

}  // namespace fettle
