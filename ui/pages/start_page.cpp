#include "ui/pages/start_page.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

QString steps() {
    return StartPage::tr(
        "<p><b>What to do first</b></p>"
        "<ol>"
        "<li>Make a fleet file: one SQLite file of one site. Everything is kept in it.</li>"
        "<li>Take the machines into the register: nameplate, bearings, what is driven, and where the sensors "
        "sit. The more of it is known, the more can be judged; what cannot be seen is listed.</li>"
        "<li>Import recordings: WAV, FLAC, CSV, UFF, MAT or HDF5 with a JSON file beside each. Drop a folder "
        "onto the "
        "window.</li>"
        "<li>Open the first round: all machines, in the order in which somebody should look.</li>"
        "</ol>");
}

QString linkTo(const QString& path) {
    const QFileInfo file(path);
    return QStringLiteral("<a href=\"%1\">%2</a>&nbsp;&nbsp; %3")
        .arg(path.toHtmlEscaped(), file.completeBaseName().toHtmlEscaped(),
             file.absolutePath().toHtmlEscaped());
}

}  // namespace

StartPage::StartPage(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      title_(new QLabel(tr("Fettle"), this)),
      trouble_(new QLabel(this)),
      steps_(new QLabel(steps(), this)),
      recentHead_(new QLabel(tr("Opened lately"), this)),
      recent_(new QVBoxLayout) {
    setObjectName(QStringLiteral("startPage"));
    trouble_->setObjectName(QStringLiteral("startTrouble"));
    for (QLabel* label : {trouble_, steps_}) {
        label->setWordWrap(true);
        label->setMaximumWidth(720);
    }
    steps_->setTextFormat(Qt::RichText);
    trouble_->hide();
    auto* open = new QPushButton(tr("Open a fleet…"), this);
    open->setObjectName(QStringLiteral("startOpen"));
    auto* make = new QPushButton(tr("New fleet…"), this);
    make->setObjectName(QStringLiteral("startNew"));
    connect(open, &QPushButton::clicked, this, &StartPage::openWanted);
    connect(make, &QPushButton::clicked, this, &StartPage::newWanted);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(open);
    buttons->addWidget(make);
    buttons->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(48, 40, 48, 32);
    all->setSpacing(12);
    all->addWidget(title_);
    all->addWidget(trouble_);
    all->addLayout(buttons);
    all->addSpacing(8);
    all->addWidget(recentHead_);
    all->addLayout(recent_);
    all->addSpacing(8);
    all->addWidget(steps_);
    all->addStretch(1);
    setRecent({});
    connect(&theme, &Theme::changed, this, &StartPage::dress);
    dress();
}

void StartPage::dress() {
    setTitleFont(*title_);
    setInk(*trouble_, theme_, Role::Trouble);
    QFont head = font();
    head.setBold(true);
    recentHead_->setFont(head);
}

void StartPage::setRecent(const QStringList& paths) {
    while (QLayoutItem* item = recent_->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    recentHead_->setVisible(!paths.isEmpty());
    for (const QString& path : paths) {
        auto* line = new QLabel(linkTo(path), this);
        line->setTextFormat(Qt::RichText);
        line->setObjectName(QStringLiteral("recentFile"));
        line->setTextInteractionFlags(Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse);
        connect(line, &QLabel::linkActivated, this, [this, path] { emit fileWanted(path); });
        recent_->addWidget(line);
    }
}

void StartPage::say(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
}

}  // namespace fettle
