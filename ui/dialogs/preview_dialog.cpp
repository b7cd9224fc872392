#include "ui/dialogs/preview_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include "core/fleet/who.h"
#include "core/intake/discover.h"
#include "ui/dialogs/outline_view.h"
#include "ui/dialogs/rules_dialog.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

Result<Preview> look(FleetFile& fleet, const QStringList& paths, bool subfolders, const Progress& progress,
                     const CancelToken& cancel) {
    std::vector<std::string> all;
    for (const QString& path : paths)
        all.push_back(path.toStdString());
    PreviewOptions options;
    options.recursive = subfolders;
    options.progress = progress;
    options.cancel = cancel;
    return preview(fleet, RealFileSystem(), all, options);
}

// What the pattern said before stays where nothing else was typed.
Status putRule(FleetFile& fleet, const std::string& pattern, Json keys) {
    const auto all = fleet.readingRules().all();
    if (!all) return fail(all.error());
    for (const ReadingRuleEntry& known : *all) {
        if (known.pattern != pattern) continue;
        auto before = parseJson(known.json, pattern);
        if (!before || !before->is_object()) continue;
        for (const auto& item : keys.items()) {
            const bool both = item.key() == "channels" && before->contains("channels") &&
                              (*before)["channels"].is_array() &&
                              (*before)["channels"].size() == item.value().size();
            if (!both) {
                (*before)[item.key()] = item.value();
                continue;
            }
            for (std::size_t c = 0; c < item.value().size(); ++c)
                (*before)["channels"][c].update(item.value()[c]);
        }
        keys = std::move(*before);
    }
    const std::string text = keys.dump(2, ' ', false, Json::error_handler_t::replace);
    if (const auto rule = readRule(pattern, text); !rule) return fail(rule.error());
    return fleet.readingRules().put({0, pattern, text, {}, orLoginName({})});
}

}  // namespace

PreviewDialog::PreviewDialog(FleetWork& work, const Theme& theme, QStringList paths, bool subfolders,
                             QWidget* parent)
    : QDialog(parent),
      work_(work),
      theme_(theme),
      paths_(std::move(paths)),
      subfolders_(subfolders),
      word_(new QLabel(this)),
      detail_(new QLabel(this)),
      matches_(new QLabel(this)),
      bar_(new QProgressBar(this)),
      groupTable_(new QTableView(this)),
      factTable_(new QTableView(this)),
      reach_(new QComboBox(this)),
      pattern_(new QLineEdit(this)),
      stop_(new QPushButton(tr("&Stop"), this)),
      keep_(new QPushButton(tr("&Keep as a rule"), this)),
      rules_(new QPushButton(tr("R&ules…"), this)),
      take_(new QPushButton(tr("&Take in"), this)),
      outline_(new OutlineView(theme, this)),
      long_(std::make_unique<LongWork>(work.path())) {
    setObjectName(QStringLiteral("previewDialog"));
    setWindowTitle(tr("What the files were taken for"));
    setAttribute(Qt::WA_DeleteOnClose);
    build();
    connect(long_.get(), &LongWork::progressed, this,
            [this](qulonglong done, qulonglong total, const QString& what) {
                bar_->setRange(0, int(std::min<qulonglong>(total, 1000000000)));
                bar_->setValue(int(std::min<qulonglong>(done, 1000000000)));
                word_->setText(tr("%1 of %2: %3").arg(done).arg(total).arg(what.section(u'/', -1)));
            });
    connect(stop_, &QPushButton::clicked, this, [this] { long_->cancel(); });
    connect(groupTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &PreviewDialog::showGroup);
    connect(reach_, &QComboBox::activated, this, &PreviewDialog::showPattern);
    connect(pattern_, &QLineEdit::textChanged, this, &PreviewDialog::countMatches);
    connect(&facts_, &QAbstractItemModel::dataChanged, this, &PreviewDialog::tellState);
    connect(keep_, &QPushButton::clicked, this, &PreviewDialog::keepRule);
    connect(rules_, &QPushButton::clicked, this, [this] {
        auto* rules = new RulesDialog(work_, theme_, this);
        connect(rules, &RulesDialog::changed, this, &PreviewDialog::read);
        rules->open();
    });
    connect(take_, &QPushButton::clicked, this, [this] {
        emit takeWanted(paths_, subfolders_);
        accept();
    });
    read();
}

void PreviewDialog::build() {
    const auto name = [](QWidget* widget, const char* text) {
        widget->setObjectName(QString::fromLatin1(text));
    };
    name(word_, "previewWord");
    name(bar_, "previewBar");
    name(stop_, "previewStop");
    name(keep_, "previewKeep");
    name(rules_, "previewRules");
    name(take_, "previewTake");
    word_->setWordWrap(true);
    bar_->setAccessibleName(tr("Files read"));
    take_->setToolTip(tr("What is ready comes in; the rest is listed as refused or parked."));
    auto* split = new QSplitter(Qt::Vertical, this);
    split->setChildrenCollapsible(false);
    split->addWidget(groupSide());
    split->addWidget(factSide());
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 3);
    auto* first = new QHBoxLayout;
    first->addWidget(word_, 1);
    first->addWidget(bar_);
    first->addWidget(stop_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(take_, QDialogButtonBox::AcceptRole);
    buttons->addButton(rules_, QDialogButtonBox::ActionRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addLayout(first);
    all->addWidget(split, 1);
    all->addWidget(buttons);
    const int room = parentWidget() ? parentWidget()->width() : 10000;
    resize(std::min(fontMetrics().averageCharWidth() * 200, room), fontMetrics().height() * 36);
}

QWidget* PreviewDialog::groupSide() {
    groupTable_->setObjectName(QStringLiteral("previewGroups"));
    groupTable_->setAccessibleName(tr("Kinds of files"));
    groupTable_->setModel(&groups_);
    setRuled(*groupTable_, theme_);
    groupTable_->setSelectionBehavior(QAbstractItemView::SelectRows);
    const int wide = fontMetrics().averageCharWidth();
    const int widths[] = {44, 24, 11, 26, 24, 16};
    for (int column = 0; column < PreviewGroupModel::Why; ++column)
        groupTable_->setColumnWidth(column, widths[column] * wide);
    keepHeadsWhole(*groupTable_);
    groupTable_->horizontalHeader()->setSectionResizeMode(PreviewGroupModel::Why, QHeaderView::Stretch);
    return groupTable_;
}

QWidget* PreviewDialog::factSide() {
    factTable_->setObjectName(QStringLiteral("previewFacts"));
    factTable_->setAccessibleName(tr("Facts of the file and where each came from"));
    factTable_->setModel(&facts_);
    setRuled(*factTable_, theme_);
    factTable_->setSelectionBehavior(QAbstractItemView::SelectItems);
    factTable_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                                QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    const int wide = fontMetrics().averageCharWidth();
    factTable_->setColumnWidth(PreviewFactModel::What, wide * 16);
    factTable_->setColumnWidth(PreviewFactModel::Value, wide * 26);
    keepHeadsWhole(*factTable_);
    factTable_->horizontalHeader()->setSectionResizeMode(PreviewFactModel::From, QHeaderView::Stretch);
    detail_->setObjectName(QStringLiteral("previewDetail"));
    detail_->setWordWrap(true);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    matches_->setObjectName(QStringLiteral("previewMatches"));
    matches_->setWordWrap(true);
    reach_->setObjectName(QStringLiteral("previewReach"));
    reach_->setAccessibleName(tr("What the rule is for"));
    reach_->addItems({tr("for all files like it"), tr("for this file alone")});
    pattern_->setObjectName(QStringLiteral("previewPattern"));
    pattern_->setAccessibleName(tr("Pattern of the path"));
    pattern_->setToolTip(
        tr("* within a name, ** across folders; {machine}, {point} and {time_utc} where the "
           "name says that; {time_utc} is fourteen digits, year to second, UTC"));
    auto* right = new QWidget(this);
    auto* lines = new QVBoxLayout(right);
    lines->setContentsMargins(12, 0, 0, 0);
    lines->addWidget(outline_);
    lines->addWidget(detail_, 1);
    auto* line = new QHBoxLayout;
    line->addWidget(reach_);
    line->addWidget(keep_);
    line->addStretch(1);
    lines->addWidget(pattern_);
    lines->addWidget(matches_);
    lines->addLayout(line);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->setChildrenCollapsible(false);
    split->addWidget(factTable_);
    split->addWidget(right);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 1);
    return split;
}

void PreviewDialog::read() {
    if (long_->running()) return;
    bar_->setRange(0, 0);
    bar_->show();
    stop_->show();
    take_->setEnabled(false);
    word_->setText(tr("The files are being read."));
    long_->start<Preview>(
        [paths = paths_, deep = subfolders_](FleetFile& fleet, const Progress& progress,
                                             const CancelToken& cancel) {
            return look(fleet, paths, deep, progress, cancel);
        },
        [this](Result<Preview> preview) { show(preview); });
}

void PreviewDialog::show(const Result<Preview>& preview) {
    bar_->hide();
    stop_->hide();
    if (!preview) return word_->setText(sentence(preview.error()));
    preview_ = std::make_shared<const Preview>(*preview);
    groups_.set(preview_);
    const auto count = [this](FilePreview::State state) {
        return std::count_if(preview_->files.begin(), preview_->files.end(),
                             [state](const FilePreview& file) { return file.state == state; });
    };
    const auto ready = count(FilePreview::State::Ready);
    word_->setText(tr("%1 ready \u00b7 %2 already in \u00b7 %3 would be parked \u00b7 %4 would be refused")
                       .arg(ready)
                       .arg(count(FilePreview::State::Known))
                       .arg(count(FilePreview::State::Parked))
                       .arg(count(FilePreview::State::Refused)));
    if (preview_->files.empty()) word_->setText(tr("No recordings were found there."));
    take_->setEnabled(ready > 0 && work_.writable());
    if (groups_.rowCount() > 0) groupTable_->setCurrentIndex(groups_.index(0, 0));
    showGroup();
}

void PreviewDialog::showGroup() {
    const FilePreview* file = groups_.first(groupTable_->currentIndex().row());
    facts_.set(file);
    outline_->set(file ? file->outline : decltype(file->outline){},
                  file && !file->channels.empty() ? shown(file->channels[0].unit.value) : QString());
    QStringList lines;
    if (file) {
        lines << shown(file->path);
        if (!file->objection.rule.empty())
            lines << shown(file->objection.place + ": " + file->objection.rule);
        if (!file->dialect.empty()) lines << shown(file->dialect);
        for (const std::string& rule : file->rules)
            lines << tr("by the rule %1").arg(shown(rule));
        for (const std::string& note : file->notes)
            lines << shown(note);
    }
    detail_->setText(lines.mid(0, 8).join(u'\n'));
    showPattern();
    tellState();
}

void PreviewDialog::showPattern() {
    const int row = groupTable_->currentIndex().row();
    const PreviewGroup* group = groups_.group(row);
    if (!group) return pattern_->clear();
    pattern_->setText(
        shown(reach_->currentIndex() == 0 ? group->pattern : patternOf(wholePath(groups_.first(row)->path))));
}

void PreviewDialog::countMatches() {
    setInk(*matches_, theme_, Role::MutedInk);
    const auto pattern = PathPattern::parse(kept(pattern_->text()));
    if (!pattern) {
        matches_->setText(sentence(pattern.error()));
        return tellState();
    }
    std::size_t count = 0;
    const std::size_t all = preview_ ? preview_->files.size() : 0;
    for (std::size_t i = 0; i < all; ++i)
        count += pattern->match(wholePath(preview_->files[i].path)).has_value();
    matches_->setText(tr("The pattern takes %1 of the %2 files.").arg(count).arg(all));
    tellState();
}

// A pattern with fields says something even where nothing was typed.
void PreviewDialog::tellState() {
    const auto pattern = PathPattern::parse(kept(pattern_->text()));
    const bool says =
        pattern && (pattern->says("machine") || pattern->says("point") || pattern->says("time_utc"));
    keep_->setEnabled(work_.writable() && !long_->running() && pattern && (facts_.typed() || says));
}

void PreviewDialog::keepRule() {
    work_.write<void>(
        this,
        [pattern = kept(pattern_->text()), keys = facts_.typedKeys()](FleetFile& fleet) {
            return putRule(fleet, pattern, keys);
        },
        [this](Status status) {
            if (status) return read();
            setInk(*matches_, theme_, Role::Trouble);
            matches_->setText(sentence(status.error()));
        });
}

}  // namespace fettle
