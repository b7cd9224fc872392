// Why: how one person wants the program: units to read in, paper, colours, scale, language, the name signed
// under decisions. One place knows the keys they are kept under (QSettings, of the user, never of the fleet
// file). Where nothing is kept the usual holds: SI, the system's colours and language, the login name.
// Thread: the window's.
#pragma once

#include <QString>
#include <optional>

#include "ui/model/units.h"
#include "ui/theme/theme.h"

class QSettings;

namespace fettle {

struct Preferences {
    Units units;
    std::optional<bool> letter;  // paper: Letter, else A4; empty: as the units are
    ThemeChoice theme = ThemeChoice::System;
    double scale = 1;  // 1 to 2
    QString language;  // "de"; empty: the system's
    QString name;      // signed under decisions; empty: the login name

    bool operator==(const Preferences&) const = default;

    // Null settings: the usual. What is kept and makes no sense is passed over.
    static Preferences read(const QSettings* settings);
    void keep(QSettings* settings) const;
};

}  // namespace fettle
