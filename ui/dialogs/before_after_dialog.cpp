#include "ui/dialogs/before_after_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QSignalBlocker>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

enum Column { What, Where, Before, After, Limit, Columns };

QString kindWord(const std::string& kind) {
    for (const Word& word : eventKinds())
        if (word.key == kind) return word.text;
    return shown(kind);
}

bool isWork(const Event& event) {
    const std::string& kind = event.kind;
    return kind == "repair" || kind == "part" || kind == "cleaning" || kind == "greasing";
}

QString figure(const std::optional<double>& value, const ShownUnit& unit) {
    if (!value) return BeforeAfterDialog::tr("not known");
    return QStringLiteral("%1 %2").arg(numberText(unit.shown(*value)), unit.unit);
}

QString weightFigure(const std::optional<double>& dban) {
    return dban ? BeforeAfterDialog::tr("%1 decibans").arg(weightText(dban))
                : BeforeAfterDialog::tr("not weighed");
}

}  // namespace

QString cureWord(CureOutcome outcome) {
    switch (outcome) {
        case CureOutcome::Cured:
            return BeforeAfterDialog::tr("cured");
        case CureOutcome::Better:
            return BeforeAfterDialog::tr("better");
        case CureOutcome::Unchanged:
            return BeforeAfterDialog::tr("unchanged");
        case CureOutcome::Worse:
            return BeforeAfterDialog::tr("worse");
        case CureOutcome::AnotherFault:
            return BeforeAfterDialog::tr("another fault");
        case CureOutcome::NotComparable:
            return BeforeAfterDialog::tr("not comparable");
    }
    return {};
}

BeforeAfterDialog::BeforeAfterDialog(FleetWork& work, const Theme& theme, const QString& machine,
                                     const Units& units, std::optional<std::int64_t> around, QWidget* parent)
    : QDialog(parent), work_(work), machine_(machine), units_(units), around_(around) {
    setObjectName(QStringLiteral("beforeAfterDialog"));
    setWindowTitle(tr("Before and after: %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    read();
}

void BeforeAfterDialog::build(const Theme& theme) {
    event_ = new QComboBox(this);
    event_->setObjectName(QStringLiteral("event"));
    event_->setAccessibleName(tr("The event that parts before from after"));
    event_->setToolTip(event_->accessibleName());
    verdict_ = new QLabel(tr("Reading…"), this);
    verdict_->setObjectName(QStringLiteral("verdict"));
    verdict_->setWordWrap(true);
    QFont bold = verdict_->font();
    bold.setBold(true);
    verdict_->setFont(bold);
    moments_ = new QLabel(this);
    moments_->setObjectName(QStringLiteral("moments"));
    moments_->setWordWrap(true);
    setInk(*moments_, theme, Role::MutedInk);
    table_ = new QTreeWidget(this);
    table_->setObjectName(QStringLiteral("figures"));
    table_->setAccessibleName(tr("Figures before and after"));
    table_->setHeaderLabels({tr("What"), tr("Where"), tr("Before"), tr("After"), tr("Aim, at most")});
    table_->setFrameStyle(QFrame::NoFrame);
    table_->setRootIsDecorated(false);
    table_->setItemsExpandable(false);
    table_->header()->setStretchLastSection(false);
    table_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->header()->setSectionResizeMode(What, QHeaderView::Stretch);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(event_, &QComboBox::currentIndexChanged, this, &BeforeAfterDialog::compare);
    auto* all = new QVBoxLayout(this);
    all->addWidget(event_);
    all->addWidget(verdict_);
    all->addWidget(moments_);
    all->addWidget(table_, 1);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(54 * em, 34 * em);
}

void BeforeAfterDialog::say(const QString& verdict, const QString& moments) {
    verdict_->setText(verdict);
    moments_->setText(moments);
    moments_->setVisible(!moments.isEmpty());
}

void BeforeAfterDialog::read() {
    work_.ask<Facts>(
        this, QStringLiteral("events"),
        [tag = kept(machine_)](FleetFile& fleet, const CancelToken&) -> Result<Facts> {
            const auto site = fleet.site();
            if (!site) return fail(site.error());
            auto events = fleet.log().events(tag);
            if (!events) return fail(events.error());
            std::reverse(events->begin(), events->end());
            std::erase_if(*events,
                          [](const Event& e) { return e.kind == "note" || e.kind == "low_battery"; });
            return Facts{std::move(*events), siteZone(site->timeZone)};
        },
        [this](Result<Facts> facts) {
            if (!facts) return say(sentence(facts.error()), {});
            fillEvents(std::move(*facts));
        });
}

void BeforeAfterDialog::fillEvents(Facts facts) {
    facts_ = std::move(facts);
    int chosen = -1;
    {
        const QSignalBlocker quiet(event_);
        for (const Event& event : facts_.events) {
            const QString day = dateText(siteTime(event.time, facts_.zone).date());
            event_->addItem(
                event.text.empty()
                    ? tr("%1, %2").arg(day, kindWord(event.kind))
                    : tr("%1, %2: %3").arg(day, kindWord(event.kind), shown(event.text).left(100)),
                qlonglong(event.id));
            if (around_ ? event.id == *around_ : chosen < 0 && isWork(event)) chosen = event_->count() - 1;
        }
        event_->setCurrentIndex(event_->count() == 0 ? -1 : std::max(0, chosen));
    }
    event_->setEnabled(event_->count() > 0);
    compare();
}

void BeforeAfterDialog::compare() {
    table_->clear();
    const int at = event_->currentIndex();
    if (at < 0)
        return say(
            tr("Nothing was done to this machine yet. Note a repair, greasing or another event, and it "
               "is compared here."),
            {});
    say(tr("Comparing…"), {});
    work_.ask<JobVerification>(
        this, QStringLiteral("compare"),
        [event = facts_.events[std::size_t(at)]](FleetFile& fleet, const CancelToken&) {
            return compareAround(fleet, event);
        },
        [this](Result<JobVerification> found) {
            if (!found) return say(sentence(found.error()), {});
            show(*found);
        });
}

void BeforeAfterDialog::show(const JobVerification& found) {
    const VerifyWindow& window = found.window;
    QString moments;
    if (!window.before.empty() && !window.after.empty())
        moments = tr("%1 recordings of the week to %2 against %3 from %4 to %5, at like speed and load.")
                      .arg(window.before.size())
                      .arg(dateText(window.before.back()))
                      .arg(window.after.size())
                      .arg(dateText(window.after.front()), dateText(window.after.back()));
    say(found.verdict ? tr("%1: %2").arg(cureWord(found.verdict->outcome), shown(found.verdict->reason))
                      : shown(window.words),
        moments);
    addLevels(found.figures);
    addFindings(found.figures);
    table_->expandAll();
}

QTreeWidgetItem* BeforeAfterDialog::group(const QString& name) {
    auto* item = new QTreeWidgetItem(table_, {name});
    QFont bold = table_->font();
    bold.setBold(true);
    item->setFont(What, bold);
    item->setFirstColumnSpanned(true);
    return item;
}

void BeforeAfterDialog::addLevels(const CureCase& figures) {
    if (figures.levels.empty()) return;
    QTreeWidgetItem* levels = group(tr("Levels"));
    for (const CureLevel& level : figures.levels) {
        const ShownUnit unit = shownUnit(shown(level.unit), units_);
        const auto aim = level.limitAB ? std::optional(*level.limitAB * kAimShare) : std::nullopt;
        new QTreeWidgetItem(levels, {tr("vibration"), shown(level.where), figure(level.before, unit),
                                     figure(level.after, unit), aim ? figure(aim, unit) : tr("no limit")});
    }
}

void BeforeAfterDialog::addFindings(const CureCase& figures) {
    for (const CureFinding& finding : figures.findings) {
        QTreeWidgetItem* lines = group(shown(finding.name));
        new QTreeWidgetItem(lines, {tr("weight"), QString(), weightFigure(finding.weightBefore),
                                    weightFigure(finding.weightAfter), tr("%1 decibans").arg(kNamedDban)});
        for (const CureLine& line : finding.lines) {
            const ShownUnit unit = shownUnit(shown(line.unit), units_);
            auto* item = new QTreeWidgetItem(
                lines,
                {shown(line.name), shown(line.where), figure(line.before, unit), figure(line.after, unit),
                 line.soundMost ? figure(line.soundMost, unit) : tr("no baseline")});
            item->setToolTip(Limit, shown(line.baseline));
        }
    }
    if (figures.fresh.empty()) return;
    QTreeWidgetItem* fresh = group(tr("Found now and not before"));
    for (const std::string& name : figures.fresh)
        new QTreeWidgetItem(fresh, {shown(name)});
}

}  // namespace fettle
