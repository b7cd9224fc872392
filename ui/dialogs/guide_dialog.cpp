#include "ui/dialogs/guide_dialog.h"

#include <QDialogButtonBox>
#include <QListWidget>
#include <QSplitter>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace fettle {

GuideDialog::GuideDialog(QWidget* parent)
    : QDialog(parent), topics_(guideTopics()), list_(new QListWidget(this)), text_(new QTextBrowser(this)) {
    setObjectName(QStringLiteral("guideDialog"));
    setWindowTitle(tr("Help"));
    setModal(false);
    list_->setObjectName(QStringLiteral("guideTopics"));
    list_->setAccessibleName(tr("Topics"));
    text_->setObjectName(QStringLiteral("guideText"));
    text_->setAccessibleName(tr("Text of the topic"));
    text_->setOpenLinks(false);
    for (const GuideTopic& topic : topics_)
        list_->addItem(topic.title);
    auto* sides = new QSplitter(this);
    sides->setChildrenCollapsible(false);
    sides->addWidget(list_);
    sides->addWidget(text_);
    sides->setStretchFactor(1, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(sides, 1);
    all->addWidget(buttons);
    connect(list_, &QListWidget::currentRowChanged, this, &GuideDialog::showTopic);
    const int em = fontMetrics().averageCharWidth();
    list_->setMinimumWidth(list_->sizeHintForColumn(0) + 3 * em);
    resize(em * 110, fontMetrics().height() * 30);
    list_->setCurrentRow(0);
}

void GuideDialog::openAt(const QString& topic) {
    int row = 0;
    for (std::size_t i = 0; i < topics_.size(); ++i)
        if (topics_[i].id == topic) row = int(i);
    list_->setCurrentRow(row);
    show();
    raise();
    activateWindow();
}

QString GuideDialog::topic() const {
    const int row = list_->currentRow();
    return row < 0 ? QString() : topics_[std::size_t(row)].id;
}

void GuideDialog::showTopic(int row) {
    if (row < 0) return;
    const GuideTopic& topic = topics_[std::size_t(row)];
    QString html = QStringLiteral("<h3>%1</h3>").arg(topic.title.toHtmlEscaped());
    for (const QString& paragraph : topic.paragraphs)
        html += QStringLiteral("<p>%1</p>").arg(paragraph);
    text_->setHtml(html);
}

}  // namespace fettle
