#include "ui/pages/register_save_bar.h"

#include <QCheckBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {
constexpr std::size_t kMostTroubles = 3;

QString troubleLine(const Trouble& trouble) {
    const QString place = shown(trouble.place).toHtmlEscaped();
    return QStringLiteral("<a href=\"%1\">%1</a> %2").arg(place, shown(trouble.rule).toHtmlEscaped());
}
}  // namespace

RegisterSaveBar::RegisterSaveBar(MachineDocument& document, const Theme& theme, QWidget* parent)
    : QWidget(parent),
      document_(document),
      theme_(theme),
      word_(new QLabel(this)),
      fromDay_(new QCheckBox(tr("the machine was changed on"), this)),
      day_(new QDateEdit(QDate::currentDate(), this)),
      note_(new QLineEdit(this)),
      save_(new QPushButton(tr("Save"), this)),
      revert_(new QPushButton(tr("Drop changes"), this)) {
    word_->setObjectName(QStringLiteral("registerTroubles"));
    fromDay_->setObjectName(QStringLiteral("registerFromDay"));
    day_->setObjectName(QStringLiteral("registerFrom"));
    note_->setObjectName(QStringLiteral("registerNote"));
    save_->setObjectName(QStringLiteral("registerSave"));
    revert_->setObjectName(QStringLiteral("registerRevert"));
    word_->setWordWrap(true);
    word_->setTextFormat(Qt::RichText);
    day_->setDisplayFormat(dateFormat());
    day_->setCalendarPopup(true);
    day_->setAccessibleName(tr("Valid from"));
    note_->setPlaceholderText(tr("why it changed: new bearing, plate read again ..."));
    note_->setAccessibleName(tr("Why it changed"));
    fromDay_->setToolTip(
        tr("Checked: what is described now holds from this day on, earlier recordings keep what "
           "held before. Not checked: a correction of what holds now."));
    auto* row = new QHBoxLayout;
    row->addWidget(fromDay_);
    row->addWidget(day_);
    row->addWidget(note_, 1);
    row->addWidget(revert_);
    row->addWidget(save_);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 6, 0, 0);
    all->addWidget(word_);
    all->addLayout(row);
    connect(save_, &QPushButton::clicked, this, &RegisterSaveBar::saveWanted);
    connect(revert_, &QPushButton::clicked, this, &RegisterSaveBar::revertWanted);
    connect(fromDay_, &QCheckBox::toggled, this, &RegisterSaveBar::refresh);
    connect(word_, &QLabel::linkActivated, this, &RegisterSaveBar::troubleChosen);
    connect(&document, &MachineDocument::edited, this, &RegisterSaveBar::refresh);
    refresh();
}

void RegisterSaveBar::show(bool known, bool writable) {
    known_ = known;
    writable_ = writable;
    refresh();
}

std::string RegisterSaveBar::from() const {
    return known_ && fromDay_->isChecked() ? kept(day_->date().toString(Qt::ISODate)) : std::string();
}

std::string RegisterSaveBar::note() const {
    return kept(note_->text());
}

void RegisterSaveBar::clear() {
    fromDay_->setChecked(false);
    note_->clear();
}

void RegisterSaveBar::refresh() {
    const auto& troubles = document_.troubles();
    QStringList lines;
    for (std::size_t i = 0; i < std::min(troubles.size(), kMostTroubles); ++i)
        lines << troubleLine(troubles[i]);
    if (troubles.size() > kMostTroubles) lines << tr("and %1 more").arg(troubles.size() - kMostTroubles);
    const bool warned = lines.isEmpty() && !document_.warnings().empty();
    if (warned)
        for (const std::string& warning : document_.warnings())
            lines << shown(warning).toHtmlEscaped();
    word_->setText(lines.mid(0, int(kMostTroubles) + 1).join(QStringLiteral("<br>")));
    word_->setVisible(!lines.isEmpty());
    setInk(*word_, theme_, warned ? Role::MutedInk : Role::Trouble);
    fromDay_->setVisible(known_);
    day_->setVisible(known_ && fromDay_->isChecked());
    save_->setEnabled(writable_ && document_.changed() && document_.sound());
    revert_->setEnabled(document_.changed());
}

}  // namespace fettle
