// Why: what Help says, as data: one topic a page or task, in the order one meets them. "{round.accept}" in a
// paragraph stands for the key of that action in the table of shortcuts, so that Help cannot say another key
// than the one that works. Thread: the window's.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

namespace fettle {

struct GuideTopic {
    QString id;  // of a page or dialog as PagePlace names it, or a word of its own
    QString title;
    QStringList paragraphs;  // rich text, keys filled in
};

std::vector<GuideTopic> guideTopics();

}  // namespace fettle
