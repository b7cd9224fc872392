#include "ui/model/round_words.h"

#include <QRegularExpression>

#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

QString moveWord(RoundMove move) {
    switch (move) {
        case RoundMove::CameOn:
            return tr("came on the list");
        case RoundMove::Up:
            return tr("more urgent");
        case RoundMove::Unseen:
            return tr("no longer seen");
        case RoundMove::Down:
            return tr("less urgent");
        case RoundMove::Left:
            return tr("left the list");
        case RoundMove::SeenAgain:
            return tr("seen again");
        case RoundMove::Added:
            return tr("new in the register");
        case RoundMove::Removed:
            return tr("gone from the round");
        case RoundMove::Stayed:
            return tr("stayed");
    }
    return {};
}

QString dueKindWord(const std::string& kind) {
    if (kind == "verify") return tr("to be verified");
    if (kind == "overdue") return tr("overdue");
    if (kind == "deferred") return tr("put off, due now");
    if (kind == "late") return tr("late recordings");
    return shown(kind);
}

QString unseenOwner(const std::string& reason) {
    if (reason == "idle") return tr("for production");
    if (reason == "not_judged" || reason == "not_fitted") return tr("for the engineer");
    return tr("for whoever keeps the sensors");
}

QString spelledDates(const QString& text) {
    static const QRegularExpression date(QStringLiteral("\\b\\d{4}-\\d{2}-\\d{2}\\b"));
    QString out;
    qsizetype from = 0;
    for (auto found = date.globalMatch(text); found.hasNext();) {
        const QRegularExpressionMatch match = found.next();
        out += text.mid(from, match.capturedStart() - from) + dateText(kept(match.captured()));
        from = match.capturedEnd();
    }
    return out + text.mid(from);
}

QString urgencyStep(const MachineMove& move) {
    const QString before = urgencyWord(move.before), after = urgencyWord(move.after);
    if (move.before.empty()) return after;
    if (move.after.empty()) return before;
    return move.before == move.after ? after : tr("%1, now %2").arg(before, after);
}

QString weighedAlone(QString sentence) {
    return sentence.replace(QStringLiteral("No baseline yet; "),
                            QStringLiteral("Weighed without a baseline; "));
}

}  // namespace fettle
