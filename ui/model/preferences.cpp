#include "ui/model/preferences.h"

#include <QSettings>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

const QString kInches = QStringLiteral("units/inches"), kPerMinute = QStringLiteral("units/perMinute"),
              kFahrenheit = QStringLiteral("units/fahrenheit"), kLetter = QStringLiteral("paper/letter"),
              kTheme = QStringLiteral("view/theme"), kScale = QStringLiteral("view/scale"),
              kLanguage = QStringLiteral("view/language"), kName = QStringLiteral("person/name");

ThemeChoice themeOf(int kept) {
    return kept == int(ThemeChoice::Light) || kept == int(ThemeChoice::Dark) ? ThemeChoice(kept)
                                                                             : ThemeChoice::System;
}

double scaleOf(double kept) {
    return std::isfinite(kept) ? std::clamp(std::round(kept * 10) / 10, 1.0, 2.0) : 1.0;
}

}  // namespace

Preferences Preferences::read(const QSettings* settings) {
    Preferences kept;
    if (!settings) return kept;
    kept.units.inches = settings->value(kInches, false).toBool();
    kept.units.perMinute = settings->value(kPerMinute, false).toBool();
    kept.units.fahrenheit = settings->value(kFahrenheit, false).toBool();
    if (settings->contains(kLetter)) kept.letter = settings->value(kLetter).toBool();
    kept.theme = themeOf(settings->value(kTheme, 0).toInt());
    kept.scale = scaleOf(settings->value(kScale, 1.0).toDouble());
    kept.language = settings->value(kLanguage).toString();
    kept.name = settings->value(kName).toString().trimmed();
    return kept;
}

void Preferences::keep(QSettings* settings) const {
    if (!settings) return;
    settings->setValue(kInches, units.inches);
    settings->setValue(kPerMinute, units.perMinute);
    settings->setValue(kFahrenheit, units.fahrenheit);
    if (letter) settings->setValue(kLetter, *letter);
    settings->setValue(kTheme, int(theme));
    settings->setValue(kScale, scale);
    settings->setValue(kLanguage, language);
    settings->setValue(kName, name.trimmed());
}

}  // namespace fettle
