// Alerts in the window, driven by object names: counted on every page, acknowledged and opened by keyboard,
// rules and delivery changed; every tab sound at two scales (WCAG 2.1: 1.4.4, 2.1.1, 4.1.2).
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTabWidget>
#include <QTableView>
#include <QToolButton>
#include <csignal>
#include <filesystem>
#include <fstream>

#include "core/fleet/alerts.h"
#include "tests/exchange/mail_server.h"
#include "tests/ui/desk_fixture.h"
#include "tests/ui/widget_audit.h"
#include "ui/dialogs/alert_delivery_form.h"
#include "ui/dialogs/alert_rules_form.h"
#include "ui/dialogs/alerts_dialog.h"

namespace fettle::desk_test {
namespace {

class AlertsWindow : public Desk {
  protected:
    void SetUp() override {
        Desk::SetUp();
        ::setenv("XDG_CONFIG_HOME", (folder_ / "config").c_str(), 1);
        ASSERT_TRUE(raiseAlerts(*fleet_, {AlertRun::Which::All, *parseUtc("2026-05-10T12:00:00Z")}));
        standing_ = *fleet_->alerts().openCount();
        ASSERT_GE(standing_, 2u);
    }
    void TearDown() override {
        Desk::TearDown();
        ::unsetenv("XDG_CONFIG_HOME");
    }
    QString count() { return part<QToolButton>("statusAlerts")->text(); }
    AlertsDialog* opened() {
        openWindow();
        window_->showDialog(QStringLiteral("alerts"));
        auto* shown = dialog<AlertsDialog>("alertsDialog");
        settle();
        return shown;
    }
    // Chooses the line of a machine.
    void choose(AlertsDialog& dialog, const QString& tag) {
        auto* table = dialog.findChild<QTableView*>("alerts");
        for (int row = 0; row < table->model()->rowCount(); ++row)
            if (table->model()->index(row, AlertModel::Machine).data().toString() == tag)
                return table->setCurrentIndex(table->model()->index(row, 0));
        ADD_FAILURE() << tag.toStdString();
    }

    std::size_t standing_ = 0;
};

TEST_F(AlertsWindow, EveryPageSaysHowManyAreOpenAndOneClickOpensThem) {
    openWindow();
    for (const char* page : {"page.round", "page.machine", "page.register"}) {
        window_->findChild<QAction*>(page)->trigger();
        settle();
        ASSERT_TRUE(part<QToolButton>("statusAlerts")->isVisible()) << page;
        EXPECT_EQ(count(), QStringLiteral("%1 open alerts").arg(standing_)) << page;
    }
    press("statusAlerts");
    auto* list = dialog<AlertsDialog>("alertsDialog");
    settle();
    EXPECT_EQ(list->findChild<QTableView*>("alerts")->model()->rowCount(), int(standing_));
}

TEST_F(AlertsWindow, AcknowledgedByKeyboardWithAReason) {
    AlertsDialog* list = opened();
    choose(*list, QStringLiteral("C-SHAKE"));
    auto* button = list->findChild<QPushButton*>("alertAcknowledge");
    EXPECT_FALSE(button->isEnabled()) << "without a reason";
    QTest::keyClick(list, Qt::Key_Return, Qt::ControlModifier);
    settle();
    EXPECT_EQ(*fleet_->alerts().openCount(), standing_);
    auto* why = list->findChild<QLineEdit*>("alertWhy");
    QTest::keyClicks(why, QStringLiteral("bolts tightened"));
    EXPECT_TRUE(button->isEnabled());
    QTest::keyClick(why, Qt::Key_Return);
    ASSERT_TRUE(waitFor([this] { return *fleet_->alerts().openCount() == standing_ - 1; }));
    settle();
    EXPECT_EQ(count(), standing_ - 1 == 1 ? QStringLiteral("1 open alert")
                                          : QStringLiteral("%1 open alerts").arg(standing_ - 1));
    const auto alerts = fleet_->alerts().alerts(false, "C-SHAKE");
    ASSERT_TRUE(alerts);
    for (const Alert& alert : *alerts) {
        EXPECT_EQ(alert.acknowledgedWhy, "bolts tightened");
        EXPECT_FALSE(alert.acknowledgedBy.empty());
    }
}

TEST_F(AlertsWindow, ReturnOpensTheMachine) {
    AlertsDialog* list = opened();
    choose(*list, QStringLiteral("C-SHAKE"));
    auto* table = list->findChild<QTableView*>("alerts");
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Return);
    settle();
    EXPECT_EQ(window_->workplace()->pageName(), QStringLiteral("machine"));
    EXPECT_EQ(window_->workplace()->selection().machine(), QStringLiteral("C-SHAKE"));
}

TEST_F(AlertsWindow, RulesHaveUnitsAndCannotAlertOnOneRecording) {
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(1);
    auto* form = list->findChild<AlertRulesForm*>("alertRulesForm");
    settle();
    AlertRule rule;
    rule.name = "Kiln bearings";
    rule.fault = "bearing";
    rule.least = 25;
    form->setRule(rule);
    EXPECT_EQ(form->findChild<QDoubleSpinBox*>("ruleLeast")->suffix(), QStringLiteral(" decibans"));
    auto* save = form->findChild<QPushButton*>("ruleSave");
    EXPECT_TRUE(save->isEnabled());
    form->findChild<QSpinBox*>("ruleHits")->setValue(1);
    EXPECT_FALSE(save->isEnabled());
    EXPECT_TRUE(form->findChild<QLabel*>("alertRuleWord")->text().contains(QStringLiteral("too few")));
    form->findChild<QSpinBox*>("ruleHits")->setValue(4);
    save->click();
    ASSERT_TRUE(waitFor([this] { return fleet_->alerts().rules()->back().name == "Kiln bearings"; }));
    EXPECT_EQ(fleet_->alerts().rules()->back().hits, 4);
    EXPECT_EQ(*fleet_->alerts().rules()->back().least, 25);
    settle();
    EXPECT_EQ(form->rule().name, "Kiln bearings") << "what was saved stays in view";
    auto* kind = form->findChild<QComboBox*>("ruleKind");
    kind->setCurrentIndex(kind->findData(QStringLiteral("silence")));
    EXPECT_FALSE(form->findChild<QSpinBox*>("ruleHits")->isVisible());
    EXPECT_TRUE(form->findChild<QDoubleSpinBox*>("ruleHours")->isVisible());
}

TEST_F(AlertsWindow, ANewRuleBeginsWithEmptyFieldsAtItsName) {
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(1);
    auto* form = list->findChild<AlertRulesForm*>("alertRulesForm");
    settle();
    ASSERT_FALSE(form->rule().name.empty()) << "the first rule is chosen";
    form->findChild<QPushButton*>("ruleNew")->click();
    auto* name = form->findChild<QLineEdit*>("ruleName");
    EXPECT_EQ(form->rule().name, "");
    EXPECT_EQ(list->focusWidget(), name);
    EXPECT_FALSE(form->findChild<QPushButton*>("ruleRemoveAlert")->isEnabled());
    const std::size_t before = fleet_->alerts().rules()->size();
    auto* kind = form->findChild<QComboBox*>("ruleKind");
    kind->setCurrentIndex(kind->findData(QStringLiteral("stage")));
    QStringList labels;
    for (const QLabel* label : form->findChildren<QLabel*>())
        if (label->isVisibleTo(form)) labels << label->text();
    EXPECT_TRUE(labels.contains(QStringLiteral("From stage"))) << labels.join(u'|').toStdString();
    name->setText(QStringLiteral("Kiln stages"));
    form->findChild<QPushButton*>("ruleSave")->click();
    ASSERT_TRUE(waitFor([&] { return fleet_->alerts().rules()->size() == before + 1; }));
}

TEST_F(AlertsWindow, DeliveryIsSavedAndATestReachesARealServer) {
    const TestMailServer server(folder_ / "mail");
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(2);
    auto* form = list->findChild<AlertDeliveryForm*>("alertDeliveryForm");
    settle();
    const auto type = [&](const char* name, const QString& text) {
        form->findChild<QLineEdit*>(QString::fromLatin1(name))->setText(text);
    };
    type("mailServer", QStringLiteral("localhost"));
    type("mailCa", QString::fromStdString(server.certificate()));
    type("mailFrom", QStringLiteral("fettle@site.example"));
    type("mailTo", QStringLiteral("a b@site.example"));
    form->findChild<QSpinBox*>("mailPort")->setValue(server.port());
    auto* save = form->findChild<QPushButton*>("deliverySave");
    EXPECT_FALSE(save->isEnabled()) << "an address that is none";
    type("mailTo", QStringLiteral("a@site.example, b@site.example"));
    ASSERT_TRUE(save->isEnabled()) << form->findChild<QLabel*>("deliveryWord")->text().toStdString();
    save->click();
    ASSERT_TRUE(waitFor([this] { return alertWays(*fleet_)->any(); }));
    settle();
    form->findChild<QPushButton*>("deliveryTest")->click();
    auto* state = form->findChild<QLabel*>("deliveryState");
    EXPECT_TRUE(waitFor([&] { return state->text() == QStringLiteral("The test was taken everywhere."); }))
        << state->text().toStdString();
    EXPECT_EQ(server.taken().size(), 2u);
    window_.reset();
}

TEST_F(AlertsWindow, WhatIsNotGivenIsShownEmpty) {
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(1);
    auto* form = list->findChild<AlertRulesForm*>("alertRulesForm");
    settle();
    AlertRule rule;
    rule.name = "Quiet";
    rule.kind = "silence";
    rule.hits = rule.of = 1;
    form->setRule(rule);
    auto* hours = form->findChild<QDoubleSpinBox*>("ruleHours");
    auto* typed = hours->findChild<QLineEdit*>();
    EXPECT_EQ(hours->text(), QString());
    EXPECT_EQ(typed->placeholderText(), QStringLiteral("no least number of hours"));
    EXPECT_FALSE(form->rule().leastHours.has_value());
    EXPECT_FALSE(form->rule().least.has_value());
    hours->setFocus();
    QTest::keyClicks(typed, QStringLiteral("36"));
    EXPECT_EQ(form->rule().leastHours, 36);
    EXPECT_EQ(hours->text(), QStringLiteral("36 h"));
    hours->selectAll();
    QTest::keyClick(typed, Qt::Key_Backspace);
    EXPECT_FALSE(form->rule().leastHours.has_value());
    EXPECT_EQ(hours->text(), QString());
    rule.leastHours = 48;
    form->setRule(rule);
    EXPECT_EQ(hours->text(), QStringLiteral("48 h"));
}

TEST_F(AlertsWindow, AProgramForThePasswordIsTypedWithQuotes) {
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(2);
    auto* form = list->findChild<AlertDeliveryForm*>("alertDeliveryForm");
    settle();
    AlertWays ways;
    ways.mail.emplace();
    ways.mail->server.host = "mail.site.example";
    ways.mail->server.user = "fettle";
    ways.mail->from = "a@site.example";
    ways.mail->to = {"b@site.example"};
    ways.mail->password.command = {"/opt/my tools/pass", "show", "the \"mail\""};
    form->setWays(ways);
    auto* place = form->findChild<QLineEdit*>("mailPasswordPlace");
    EXPECT_EQ(place->text(), QStringLiteral("\"/opt/my tools/pass\" show \"the \\\"mail\\\"\""));
    ASSERT_TRUE(form->ways());
    EXPECT_EQ(form->ways()->mail->password, ways.mail->password);
    place->setText(QStringLiteral("\"/opt/my tools/pass show"));
    EXPECT_FALSE(form->ways());
    EXPECT_FALSE(form->findChild<QPushButton*>("deliverySave")->isEnabled());
    EXPECT_TRUE(
        form->findChild<QLabel*>("deliveryWord")->text().contains(QStringLiteral("without its partner")));
}

// A secret program that would take ten minutes is killed when dialog or window closes, and holds nothing up.
class AlertsWithSlowSecret : public AlertsWindow {
  protected:
    void SetUp() override {
        AlertsWindow::SetUp();
        AlertWays ways;
        ways.mail.emplace();
        ways.mail->server.host = "localhost";
        ways.mail->server.user = "fettle";
        ways.mail->from = "a@site.example";
        ways.mail->to = {"b@site.example"};
        ways.mail->password.command = {
            "/bin/sh", "-c", "echo $$ > \"$1.part\" && mv \"$1.part\" \"$1\" && sleep 600", "sh", number_};
        ASSERT_TRUE(setAlertWays(*fleet_, ways));
    }
    // Of the program that sleeps; -1 where none came.
    pid_t secret() {
        EXPECT_TRUE(waitFor([&] { return std::filesystem::exists(number_); }));
        pid_t pid = -1;
        std::ifstream(number_) >> pid;
        return pid;
    }
    const std::string number_ = folder_ / "number";
};

TEST_F(AlertsWithSlowSecret, ClosingTheDialogEndsIt) {
    AlertsDialog* list = opened();
    list->findChild<QTabWidget*>("alertTabs")->setCurrentIndex(2);
    settle();
    list->findChild<QPushButton*>("deliveryTest")->click();
    const pid_t pid = secret();
    ASSERT_GT(pid, 0);
    EXPECT_EQ(::kill(pid, 0), 0) << "it still sleeps";
    list->close();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_EQ(::kill(pid, 0), -1);
}

TEST_F(AlertsWithSlowSecret, ClosingTheWindowEndsIt) {
    const Alert first = fleet_->alerts().alerts(false)->front();
    ASSERT_TRUE(
        fleet_->alerts().addItem({0, first.id, "mail b@site.example", "raised", false, first.raised}));
    openWindow();
    const pid_t pid = secret();
    ASSERT_GT(pid, 0);
    EXPECT_EQ(::kill(pid, 0), 0) << "it still sleeps";
    window_.reset();
    EXPECT_EQ(::kill(pid, 0), -1);
}

TEST_F(AlertsWindow, EveryTabShowsItsWordsAndIsReached) {
    for (const double scale : {1.0, 1.5}) {
        theme_.applyTo(*qApp, scale);
        AlertsDialog* list = opened();
        window_->resize(1280, 800);
        settle();
        auto* tabs = list->findChild<QTabWidget*>("alertTabs");
        for (int tab = 0; tab < tabs->count(); ++tab) {
            tabs->setCurrentIndex(tab);
            QTest::qWait(20);
            settle();
            const QStringList troubles =
                clippedTexts(*list) + overlaps(*list) + namelessControls(*list) + unreachableControls(*list);
            EXPECT_EQ(troubles.join(QChar('\n')).toStdString(), "") << "tab " << tab << " at " << scale;
        }
        window_.reset();
    }
    theme_.applyTo(*qApp, 1.0);
}

}  // namespace

}  // namespace fettle::desk_test
