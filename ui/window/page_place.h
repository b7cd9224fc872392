// Why: the page shown is always a function of (fleet file, machine, time, fault); this is that function's
// argument, as the command line gives it and as the window remembers it. Plain data.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "core/base/time.h"

namespace fettle {

struct PagePlace {
    QString page;  // round machine register; empty: machine where one is named, else round
    QString machine, at, fault;
    std::optional<Instant> time;
    QString dialog;  // one of dialogNames(); empty: none
};

// What MainWindow::showDialog and --dialog know.
inline QStringList dialogNames() {
    return {QStringLiteral("asks"),       QStringLiteral("import"),      QStringLiteral("refused"),
            QStringLiteral("event"),      QStringLiteral("start"),       QStringLiteral("close"),
            QStringLiteral("sheet"),      QStringLiteral("report"),      QStringLiteral("compare"),
            QStringLiteral("sheets"),     QStringLiteral("bearings"),    QStringLiteral("alike"),
            QStringLiteral("rules"),      QStringLiteral("preview"),     QStringLiteral("new"),
            QStringLiteral("keys"),       QStringLiteral("help"),        QStringLiteral("about"),
            QStringLiteral("trial"),      QStringLiteral("balance"),     QStringLiteral("resonance"),
            QStringLiteral("jobs"),       QStringLiteral("history"),     QStringLiteral("before"),
            QStringLiteral("rebaseline"), QStringLiteral("preferences"), QStringLiteral("twins"),
            QStringLiteral("alerts"),     QStringLiteral("retention"),   QStringLiteral("reexamine")};
}

}  // namespace fettle
