#include "ui/dialogs/new_fleet_dialog.h"

#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QTimeZone>

#include "ui/model/words.h"

namespace fettle {

namespace {

QString fileNameFor(const QString& site) {
    QString name;
    for (const QChar c : site.simplified().toLower())
        name += c.isLetterOrNumber() ? c : QChar(u'_');
    return name.isEmpty() ? QString() : name + QStringLiteral(".fettle");
}

}  // namespace

NewFleetDialog::NewFleetDialog(const Theme& theme, const QString& folder, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("newFleetDialog"), tr("New fleet"), tr("Make the fleet file"),
                   parent),
      folder_(folder),
      site_(new QLineEdit(this)),
      path_(new QLineEdit(this)),
      zone_(new QComboBox(this)) {
    explain(
        tr("One file holds one site: its machines, recordings, rounds and decisions. It is a SQLite "
           "database on this computer's own disk; a network drive cannot hold it safely."));
    zone_->setEditable(true);
    for (const QByteArray& id : QTimeZone::availableTimeZoneIds())
        zone_->addItem(QString::fromUtf8(id));
    zone_->setEditText(QString::fromUtf8(QTimeZone::systemTimeZoneId()));
    auto* browse = new QPushButton(tr("Choose…"), this);
    browse->setObjectName(QStringLiteral("browse"));
    browse->setAutoDefault(false);
    browse->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    addField(tr("Site"), site_, "site");
    addField(tr("Time zone"), zone_, "zone");
    addField(tr("File"), path_, "path");
    form()->addRow(QString(), browse);
    connect(browse, &QPushButton::clicked, this, &NewFleetDialog::browse);
    connect(site_, &QLineEdit::textChanged, this, [this](const QString& site) {
        if (!pathTyped_)
            path_->setText(site.trimmed().isEmpty() ? QString() : QDir(folder_).filePath(fileNameFor(site)));
        check();
    });
    connect(path_, &QLineEdit::textEdited, this, [this] { pathTyped_ = true; });
    connect(path_, &QLineEdit::textChanged, this, &NewFleetDialog::check);
    connect(zone_, &QComboBox::editTextChanged, this, &NewFleetDialog::check);
    connect(this, &QDialog::accepted, this, [this] {
        SiteSettings site;
        site.site = kept(site_->text());
        site.timeZone = kept(zone_->currentText());
        emit wanted(path(), site);
    });
    const std::initializer_list<QWidget*> inOrder = {site_, zone_, path_, browse};
    for (auto* one = inOrder.begin(); one + 1 != inOrder.end(); ++one)
        setTabOrder(one[0], one[1]);
    site_->setFocus();
    check();
}

QString NewFleetDialog::path() const {
    QString path = path_->text().trimmed();
    if (!path.isEmpty() && QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".fettle");
    return path;
}

void NewFleetDialog::check() {
    if (site_->text().trimmed().isEmpty()) return lacks(tr("The site needs a name."));
    if (!QTimeZone(zone_->currentText().trimmed().toUtf8()).isValid())
        return lacks(tr("The time zone is not known; it is named like Europe/London or UTC."));
    if (path().isEmpty()) return lacks(tr("The file needs a name."));
    if (QFileInfo::exists(path()))
        return lacks(tr("A file of this name is already there; it is not replaced."));
    if (!QFileInfo(path()).dir().exists()) return lacks(tr("The folder is not there."));
    lacks({});
}

void NewFleetDialog::browse() {
    auto* dialog = new QFileDialog(this, tr("New fleet file"), folder_, tr("Fleet files (*.fettle)"));
    dialog->setObjectName(QStringLiteral("newFleetPicker"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("fettle"));
    connect(dialog, &QFileDialog::fileSelected, this, [this](const QString& path) {
        pathTyped_ = true;
        path_->setText(path);
    });
    dialog->open();
}

}  // namespace fettle
