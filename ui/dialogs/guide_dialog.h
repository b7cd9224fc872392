// Why: Help opens at the page one is on and stays open beside the work: topics on the left, the text of one
// on the right. Not modal. Thread: the window's.
#pragma once

#include <QDialog>
#include <vector>

#include "ui/dialogs/guide_topics.h"

class QListWidget;
class QTextBrowser;

namespace fettle {

class GuideDialog : public QDialog {
    Q_OBJECT
  public:
    explicit GuideDialog(QWidget* parent);
    void openAt(const QString& topic);  // an id of guideTopics(); another: the first
    QString topic() const;

  private:
    void showTopic(int row);

    std::vector<GuideTopic> topics_;
    QListWidget* list_;
    QTextBrowser* text_;
};

}  // namespace fettle
