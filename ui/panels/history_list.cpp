#include "ui/panels/history_list.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScopedValueRollback>
#include <QSignalBlocker>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/panels/photo_strip.h"

namespace fettle {

namespace {

enum Column { Day, What, Where, Words, By, Columns };

QString kindWord(const std::string& kind) {
    for (const Word& word : eventKinds())
        if (word.key == kind) return word.text;
    return shown(kind);
}

QPushButton* button(const QString& text, const QString& help, const char* name, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setToolTip(help);
    made->setAutoDefault(false);
    return made;
}

}  // namespace

HistoryList::HistoryList(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent)
    : QWidget(parent), work_(work), selection_(selection) {
    setObjectName(QStringLiteral("historyList"));
    setAccessibleName(tr("History of the machine"));
    build(theme);
    connect(&selection_, &Selection::machineChanged, this, &HistoryList::read);
    connect(&selection_, &Selection::recordingChanged, this, &HistoryList::followMoment);
    connect(&work_, &FleetWork::changedFleet, this, &HistoryList::read);
    connect(tree_, &QTreeWidget::currentItemChanged, this, &HistoryList::chosen);
    connect(tree_, &QTreeWidget::itemClicked, this, &HistoryList::go);
    connect(tree_, &QTreeWidget::itemActivated, this, &HistoryList::go);
    connect(kind_, &QComboBox::currentIndexChanged, this, &HistoryList::fill);
    connect(photos_, &PhotoStrip::keptWanted, this,
            [this](qlonglong photo) { emit photoWanted(selection_.machine(), photo); });
    read();
}

void HistoryList::build(const Theme& theme) {
    kind_ = new QComboBox(this);
    kind_->setObjectName(QStringLiteral("historyKind"));
    kind_->setAccessibleName(tr("Which events are listed"));
    kind_->setToolTip(kind_->accessibleName());
    kind_->addItem(tr("all events"), QString());
    for (const Word& word : eventKinds())
        kind_->addItem(word.text, shown(word.key));
    tree_ = new QTreeWidget(this);
    tree_->setObjectName(QStringLiteral("history"));
    tree_->setAccessibleName(tr("Events of the machine, newest first"));
    tree_->setColumnCount(Columns);
    tree_->setHeaderLabels({tr("Day"), tr("What"), tr("Where"), tr("In words"), tr("By")});
    tree_->setFrameStyle(QFrame::NoFrame);
    tree_->setRootIsDecorated(false);
    tree_->setItemsExpandable(false);
    tree_->setUniformRowHeights(false);
    tree_->setWordWrap(true);
    tree_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    tree_->header()->setSectionResizeMode(Words, QHeaderView::Stretch);
    tree_->header()->setStretchLastSection(false);
    words_ = new QLabel(this);
    words_->setObjectName(QStringLiteral("historyWords"));
    words_->setWordWrap(true);
    photos_ = new PhotoStrip(work_, theme, false, this);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(4, 4, 4, 4);
    all->addWidget(words_);
    all->addWidget(tree_, 1);
    all->addWidget(photos_);
    all->addWidget(buildFoot());
}

QWidget* HistoryList::buildFoot() {
    auto* foot = new QWidget(this);
    note_ = button(tr("&Add…"), tr("A note, greasing, repair or another event of this machine"),
                   "historyNote", foot);
    correct_ = button(tr("C&orrect…"), tr("A new note about the chosen event; nothing is rewritten"),
                      "historyCorrect", foot);
    compare_ = button(tr("&Before and after…"), tr("The machine before and after the chosen event"),
                      "historyCompare", foot);
    import_ = button(tr("&Import events…"), tr("Events of this site from a CSV or JSON table"),
                     "historyImport", foot);
    connect(note_, &QPushButton::clicked, this, [this] { emit noteWanted(selection_.machine()); });
    connect(correct_, &QPushButton::clicked, this, [this] {
        if (const HistoryEntry* entry = current()) emit correctionWanted(entry->event);
    });
    connect(compare_, &QPushButton::clicked, this, [this] {
        if (const HistoryEntry* entry = current()) emit compareWanted(entry->event);
    });
    connect(import_, &QPushButton::clicked, this, &HistoryList::importWanted);
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part : std::initializer_list<QWidget*>{note_, correct_, compare_, import_})
        row->addWidget(part);
    row->addStretch(1);
    row->addWidget(kind_);
    return foot;
}

void HistoryList::say(const QString& words) {
    words_->setText(words);
    words_->setVisible(!words.isEmpty());
}

void HistoryList::read() {
    const std::string tag = kept(selection_.machine());
    note_->setEnabled(work_.writable() && !tag.empty());
    import_->setEnabled(work_.writable());
    if (tag.empty()) {
        entries_.clear();
        fill();
        return say(tr("No machine is chosen. Open one from the round or the register."));
    }
    work_.ask<Answer>(
        this, QStringLiteral("history"),
        [tag](FleetFile& fleet, const CancelToken&) -> Result<Answer> {
            const auto site = fleet.site();
            if (!site) return fail(site.error());
            auto entries = machineHistory(fleet, tag);
            if (!entries) return fail(entries.error());
            return Answer{std::move(*entries), siteZone(site->timeZone)};
        },
        [this](Result<Answer> answer) {
            if (!answer) return say(sentence(answer.error()));
            entries_ = std::move(answer->entries);
            zone_ = answer->zone;
            fill();
        });
}

void HistoryList::fill() {
    const std::string kind = kept(kind_->currentData().toString());
    {
        const QSignalBlocker quiet(tree_);
        tree_->clear();
        for (const HistoryEntry& entry : entries_)
            if (kind.empty() || entry.event.kind == kind) addEntry(entry);
        tree_->expandAll();
    }
    const bool none = tree_->topLevelItemCount() == 0;
    say(!none              ? QString()
        : entries_.empty() ? tr("Nothing is noted of this machine yet. Greasings, repairs and remarks stand "
                                "here and in the plots; add one, or import the site's list.")
                           : tr("No event of this kind. Choose another kind, or all events."));
    followMoment();
    chosen();
}

void HistoryList::addEntry(const HistoryEntry& entry) {
    const Event& event = entry.event;
    QString words = shown(event.text);
    if (!entry.photos.empty())
        words = tr("%1 [%2]").arg(words, entry.photos.size() == 1
                                             ? tr("1 photograph")
                                             : tr("%1 photographs").arg(entry.photos.size()));
    auto* item = new QTreeWidgetItem(tree_, {dateText(siteTime(event.time, zone_).date()),
                                             kindWord(event.kind), shown(event.at), words, shown(event.by)});
    item->setData(Day, Qt::UserRole, qlonglong(event.id));
    item->setToolTip(Day, momentText(event.time, zone_));
    item->setToolTip(Words, shown(event.text));
    const auto below = [&](const QString& what, const QString& text, const QString& by) {
        auto* line = new QTreeWidgetItem(item, {QString(), what, QString(), text, by});
        line->setData(Day, Qt::UserRole, qlonglong(event.id));
        line->setToolTip(Words, text);
    };
    if (!entry.heard.empty()) below(tr("heard"), shown(entry.heard), {});
    for (const Event& note : entry.corrections)
        below(tr("corrected"), shown(correctionWords(note)), shown(note.by));
}

const HistoryEntry* HistoryList::current() const {
    const QTreeWidgetItem* item = tree_->currentItem();
    if (!item) return nullptr;
    const qlonglong id = item->data(Day, Qt::UserRole).toLongLong();
    for (const HistoryEntry& entry : entries_)
        if (entry.event.id == id) return &entry;
    return nullptr;
}

void HistoryList::chosen() {
    const HistoryEntry* entry = current();
    correct_->setEnabled(entry && work_.writable());
    compare_->setEnabled(entry);
    photos_->setKept(entry ? entry->photos : std::vector<Photo>{});
}

// The plots go to the moment of the event.
void HistoryList::go() {
    const HistoryEntry* entry = current();
    if (!entry) return;
    const QScopedValueRollback guard(following_, true);
    selection_.setRecording({}, entry->event.time);
}

// The newest event at or before the moment that is chosen elsewhere.
void HistoryList::followMoment() {
    if (following_ || !selection_.time()) return;
    const QScopedValueRollback guard(following_, true);
    for (int i = 0; i < tree_->topLevelItemCount(); ++i) {
        QTreeWidgetItem* item = tree_->topLevelItem(i);
        const qlonglong id = item->data(Day, Qt::UserRole).toLongLong();
        for (const HistoryEntry& entry : entries_)
            if (entry.event.id == id && entry.event.time <= *selection_.time())
                return tree_->setCurrentItem(item);
    }
}

}  // namespace fettle
