// Why: every word of the window goes through tr(); here one language of those carried along is chosen, and
// with it how numbers and dates are shown. What is written to files, copied as a table or kept in the fleet
// file stays free of it. The engine's own sentences (verdicts, reasons, refusals) are kept as they were
// weighed, in English. Call after QApplication is made and before the first widget; another choice holds from
// the next start. Thread: the window's.
#pragma once

#include <QString>
#include <vector>

namespace fettle {

struct Language {
    QString code, name;  // "de", "Deutsch"
};

std::vector<Language> languages();  // English first
// `code`: one of those; empty: the system's where it is among them, else English.
void speak(const QString& code);
QString spoken();  // the code that holds

}  // namespace fettle
