// Why: the words of the round for people: urgencies, reasons, kinds of events, dates and ages, the same on
// every page and dialog. Keys stay as the fleet file has them; a key without a word is shown as it is.
// Thread: the window's.
#pragma once

#include <QDate>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"
#include "core/round/round.h"

namespace fettle {

struct Word {
    std::string key;
    QString text;
};

QString shown(const std::string& text);  // UTF-8
std::string kept(const QString& text);   // UTF-8, trimmed
QString sentence(const Error& error);    // first letter large, full stop

QString urgencyWord(const std::string& urgency);  // "act"
const std::vector<Word>& unseenReasons();  // silent low_battery poor_data moved idle not_fitted not_judged
QString unseenReasonWord(const std::string& key);
const std::vector<Word>& eventKinds();                                // repair greasing part ...
QString faultWords(const std::string& fault, const std::string& at);  // "outer-race defect, driver DE"

QString counted(qsizetype count, const QString& one, const QString& several);  // "1 machine", "7 machines"
QString dateFormat();                          // of fields, as dateText() writes
QString dateText(const std::string& isoDate);  // "2026-05-10" -> "10 May 2026"
QString dateText(const QDate& date);
QString dateText(Instant time);                         // of UTC
QString ageText(Instant from, Instant until);           // "20 min", "5 h", "3 d", "9 weeks"
QString decisionText(const Decision& decision);         // "deferred to 1 June 2026", without the reason
QString weightText(const std::optional<double>& dban);  // "31.2"; empty: none
QString numberText(double value);                       // three figures, no grouping

}  // namespace fettle
