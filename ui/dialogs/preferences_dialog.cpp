#include "ui/dialogs/preferences_dialog.h"

#include <QComboBox>
#include <QLineEdit>
#include <QSpinBox>
#include <algorithm>
#include <cmath>

#include "core/fleet/who.h"
#include "ui/model/language.h"
#include "ui/model/words.h"

namespace fettle {

PreferencesDialog::PreferencesDialog(const Theme& theme, const Preferences& now, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("preferencesDialog"), tr("Preferences"), tr("Use these"), parent),
      before_(now) {
    addUnits();
    addLooks();
    connect(language_, &QComboBox::currentIndexChanged, this, &PreferencesDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit chosen(preferences()); });
    check();
}

void PreferencesDialog::addUnits() {
    velocity_ = new QComboBox(this);
    velocity_->addItem(tr("mm/s"), false);
    velocity_->addItem(tr("in/s"), true);
    frequency_ = new QComboBox(this);
    frequency_->addItem(tr("Hz"), false);
    frequency_->addItem(tr("r/min"), true);
    temperature_ = new QComboBox(this);
    temperature_->addItem(tr("°C"), false);
    temperature_->addItem(tr("°F"), true);
    velocity_->setCurrentIndex(before_.units.inches);
    frequency_->setCurrentIndex(before_.units.perMinute);
    temperature_->setCurrentIndex(before_.units.fahrenheit);
    addField(tr("Velocity in"), velocity_, "velocity");
    addField(tr("Frequency in"), frequency_, "frequency");
    addField(tr("Temperature in"), temperature_, "temperature");
}

void PreferencesDialog::addLooks() {
    paper_ = new QComboBox(this);
    paper_->addItem(tr("A4"), false);
    paper_->addItem(tr("Letter"), true);
    paper_->setCurrentIndex(before_.letter.value_or(before_.units.inches));
    theme_ = new QComboBox(this);
    theme_->addItem(tr("as the system"), int(ThemeChoice::System));
    theme_->addItem(tr("light"), int(ThemeChoice::Light));
    theme_->addItem(tr("dark"), int(ThemeChoice::Dark));
    theme_->setCurrentIndex(std::max(0, theme_->findData(int(before_.theme))));
    scale_ = new QSpinBox(this);
    scale_->setRange(100, 200);
    scale_->setSingleStep(10);
    scale_->setSuffix(tr(" %"));
    scale_->setValue(int(std::lround(before_.scale * 100)));
    language_ = new QComboBox(this);
    language_->addItem(tr("as the system"), QString());
    for (const Language& language : languages())
        language_->addItem(language.name, language.code);
    language_->setCurrentIndex(std::max(0, language_->findData(before_.language)));
    name_ = new QLineEdit(before_.name, this);
    name_->setPlaceholderText(shown(orLoginName({})));
    addField(tr("Paper"), paper_, "paper");
    addField(tr("Colours"), theme_, "theme");
    addField(tr("Size of everything"), scale_, "scale");
    addField(tr("Language"), language_, "language");
    addField(tr("Sign decisions as"), name_, "name");
}

void PreferencesDialog::check() {
    const bool another = language_->currentData().toString() != before_.language;
    explain(another
                ? tr("The language holds from the next start, all else at once.")
                : tr("Units are those of reading: the fleet file and everything exported stay in mm/s, Hz "
                     "and degrees Celsius."));
    lacks({});
}

Preferences PreferencesDialog::preferences() const {
    Preferences now = before_;
    now.units = {velocity_->currentData().toBool(), frequency_->currentData().toBool(),
                 temperature_->currentData().toBool()};
    now.letter = paper_->currentData().toBool();
    now.theme = ThemeChoice(theme_->currentData().toInt());
    now.scale = scale_->value() / 100.0;
    now.language = language_->currentData().toString();
    now.name = name_->text().trimmed();
    return now;
}

}  // namespace fettle
