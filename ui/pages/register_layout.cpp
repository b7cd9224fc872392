// The register page's parts put in their places; what they do is in register_page.cpp.
#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QStandardItemModel>
#include <QTabWidget>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/model/shortcuts.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/register_form.h"
#include "ui/pages/register_page.h"
#include "ui/pages/register_save_bar.h"
#include "ui/pages/register_table.h"
#include "ui/pages/register_tree.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {
constexpr int kBothSides = 100;  // letters
}

QAction* RegisterPage::add(const char* id, void (RegisterPage::*slot)()) {
    QAction* action = actionFor(id, this);
    connect(action, &QAction::triggered, this, slot);
    addAction(action);
    actions_[id] = action;
    return action;
}

void RegisterPage::build() {
    add("register.save", &RegisterPage::save);
    add("register.add", &RegisterPage::startMachine);
    add("register.copy", &RegisterPage::copyMachine);
    add("register.remove", &RegisterPage::askRemove);
    add("register.import", &RegisterPage::askImport);
    add("register.export", &RegisterPage::askExport);
    add("register.undo", &RegisterPage::undo);
    add("register.redo", &RegisterPage::redo);
    add("register.bearing", &RegisterPage::bearingWanted);
    add("register.alike", &RegisterPage::alikeWanted);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->setChildrenCollapsible(false);
    split->addWidget(leftSide());
    split->addWidget(rightSide());
    split->setStretchFactor(1, 1);
    split->setSizes({fontMetrics().averageCharWidth() * 52, 1000});
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(split);
    QAction* find = actionFor("register.find", this);
    connect(find, &QAction::triggered, tree_, &RegisterTree::focusFilter);
    addAction(find);
}

QWidget* RegisterPage::leftSide() {
    auto* left = new QWidget(this);
    tree_ = new RegisterTree(left);
    counts_ = new QLabel(left);
    counts_->setObjectName(QStringLiteral("registerCounts"));
    connect(tree_, &RegisterTree::machineChosen, this, [this](const QString& tag) {
        if (tag != tag_) leaveFor([this, tag] { openMachine(tag); });
    });
    auto* rows = new QGridLayout;
    const char* const ids[] = {"register.add",   "register.copy",   "register.remove",
                               "register.alike", "register.import", "register.export"};
    int place = 0;
    for (const char* id : ids) {
        auto* button = new QToolButton(left);
        button->setObjectName(actions_[id]->objectName() + QStringLiteral(".button"));
        button->setDefaultAction(actions_[id]);
        button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        button->setFocusPolicy(Qt::TabFocus);
        rows->addWidget(button, place / 2, place % 2);
        ++place;
    }
    auto* all = new QVBoxLayout(left);
    all->setContentsMargins(16, 12, 8, 12);
    all->addWidget(tree_, 1);
    all->addWidget(counts_);
    all->addLayout(rows);
    return left;
}

QWidget* RegisterPage::rightSide() {
    auto* nothing =
        new QLabel(tr("Choose a machine at the left, or take a new one into the register."), this);
    nothing->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    nothing->setMargin(24);
    auto* right = new QWidget(this);
    title_ = new QLabel(right);
    title_->setObjectName(QStringLiteral("registerTitle"));
    setTitleFont(*title_);
    title_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);  // a long service widens no window
    older_ = new QLabel(right);
    older_->setObjectName(QStringLiteral("registerOlder"));
    older_->hide();
    tabs_ = new QTabWidget(right);
    tabs_->setObjectName(QStringLiteral("registerTabs"));
    setQuietTabs(*tabs_);
    tabs_->installEventFilter(this);
    bar_ = new RegisterSaveBar(document_, theme_, right);
    auto* all = new QVBoxLayout(right);
    all->setContentsMargins(16, 12, 16, 10);
    buildHead(*all);
    all->addWidget(older_);
    all->addWidget(tabs_, 1);
    all->addWidget(new ThinRule(theme_, right));
    all->addWidget(bar_);
    buildTabs();
    connect(bar_, &RegisterSaveBar::saveWanted, this, &RegisterPage::save);
    connect(bar_, &RegisterSaveBar::revertWanted, this, [this] {
        document_.setSaved();
        if (tag_.isEmpty())
            refresh();
        else
            openMachine(tag_);
    });
    connect(bar_, &RegisterSaveBar::troubleChosen, this, &RegisterPage::goToTrouble);
    right_ = new QStackedWidget(this);
    right_->addWidget(nothing);
    right_->addWidget(right);
    return right_;
}

// The parts below each other, scrolling when the window is low.
QWidget* RegisterPage::tab(const std::vector<QWidget*>& parts) {
    auto* page = new QWidget;
    auto* lines = new QVBoxLayout(page);
    lines->setContentsMargins(0, 12, 8, 8);
    for (QWidget* part : parts)
        lines->addWidget(part);
    lines->addStretch(1);
    auto* scroll = new QScrollArea(tabs_);
    scroll->setWidget(page);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    return scroll;
}

void RegisterPage::buildTabs() {
    auto* plate = new QWidget;
    sides_ = new QBoxLayout(QBoxLayout::LeftToRight, plate);
    sides_->setContentsMargins(0, 0, 0, 0);
    sides_->setSpacing(32);
    machine_ = new RegisterForm(document_, theme_, machineFields(), plate);
    driver_ = new RegisterForm(document_, theme_, driverFields(), plate);
    sides_->addWidget(machine_, 1);
    sides_->addWidget(driver_, 1);
    const auto table = [this](int tab, std::unique_ptr<TableRows> rows, std::vector<FieldSpec> columns,
                              const QString& title, const char* name) {
        auto* made =
            new RegisterTable(document_, std::move(rows), std::move(columns), title, name, theme_, this);
        tables_.push_back(made);
        tablesOfTab_[tab].push_back(made);
        return made;
    };
    tabs_->addTab(tab({plate}), {});
    tabs_->addTab(tab({table(1, bearingRows(), bearingColumns(),
                             tr("Bearings, by designation, geometry or orders"), "bearings")}),
                  {});
    tabs_->addTab(
        tab({table(2, shaftRows(), shaftColumns(), tr("Shafts, where there is more than one"), "shafts"),
             table(2, arrayRows("/gears", {{"id", "G1"}, {"kind", "helical"}}), gearColumns(), tr("Gears"),
                   "gears"),
             table(2, arrayRows("/belts", {{"id", "B1"}, {"kind", "vee"}}), beltColumns(), tr("Belts"),
                   "belts"),
             table(2, arrayRows("/intermediate", {{"id", "G1 box"}}), boxColumns(),
                   tr("Gearboxes and bearing stands between"), "boxes")}),
        {});
    Json point = {{"id", "M-DE"}, {"at", "driver DE"}, {"mount", "unknown"}};
    const Json channel = {
        {"name", "x"}, {"quantity", "acceleration"}, {"unit", "g"}, {"direction", "unknown"}};
    point["channels"] = Json::array({channel});
    tabs_->addTab(
        tab({table(3, arrayRows("/points", point), pointColumns(), tr("Measuring points"), "points"),
             table(3, pointRows("channels", channel), channelColumns(), tr("Channels"), "channels"),
             table(3, pointRows("node", {{"id", "node"}}), nodeColumns(), tr("Sensor nodes fitted"),
                   "nodes")}),
        {});
    blindWord_ = new QLabel(tabs_);
    blindWord_->setObjectName(QStringLiteral("blindWord"));
    blindWord_->setWordWrap(true);
    auto* blind = new QWidget(tabs_);
    auto* lines = new QVBoxLayout(blind);
    lines->setContentsMargins(0, 12, 0, 0);
    lines->addWidget(blindWord_);
    lines->addWidget(
        listTable(blind_, {tr("Fault"), tr("Where"), tr("Why it cannot be seen"), tr("What would help")},
                  "blindSpots"),
        1);
    tabs_->addTab(blind, {});
    tabs_->addTab(historySide(), {});
}

// Side by side where there is room for both.
bool RegisterPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == tabs_ && event->type() == QEvent::Resize) {
        const bool narrow = tabs_->width() < fontMetrics().averageCharWidth() * kBothSides;
        sides_->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    }
    return QWidget::eventFilter(watched, event);
}

QTableView* RegisterPage::listTable(QStandardItemModel*& model, const QStringList& heads, const char* name) {
    model = new QStandardItemModel(0, int(heads.size()), this);
    model->setHorizontalHeaderLabels(heads);
    auto* view = new QTableView(tabs_);
    view->setObjectName(QString::fromLatin1(name));
    view->setModel(model);
    setRuled(*view, theme_);
    view->setWordWrap(true);
    view->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    for (int last = int(heads.size()) - 1; last >= 2; --last)
        view->horizontalHeader()->setSectionResizeMode(last, QHeaderView::Stretch);
    view->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    return view;
}

}  // namespace fettle
