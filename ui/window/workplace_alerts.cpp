// Alerts between rounds: their dialog, how many are open, and the post that sends them where that is set.
#include "core/fleet/alert_post.h"
#include "ui/dialogs/alerts_dialog.h"
#include "ui/model/words.h"
#include "ui/window/workplace.h"

namespace fettle {

namespace {

struct AlertsHere {
    std::size_t open = 0;
    bool sends = false;  // somewhere, and this user may
};

Result<AlertsHere> readAlertsHere(FleetFile& fleet) {
    const auto open = fleet.alerts().openCount();
    if (!open) return fail(open.error());
    const auto ways = alertWays(fleet);
    if (!ways) return AlertsHere{*open, false};
    const auto allowed = deliveryAllowed(fleet);
    if (!allowed) return fail(allowed.error());
    return AlertsHere{*open, ways->any() && *allowed};
}

}  // namespace

void Workplace::showAlerts() {
    auto* dialog = new AlertsDialog(*work_, theme_, this);
    connect(dialog, &AlertsDialog::machineWanted, this,
            [this](const QString& tag, const QString& at, const QString& fault) {
                go({QStringLiteral("machine"), tag, at, fault, {}, {}});
                emit placeChanged();
            });
    dialog->open();
}

void Workplace::watchAlerts() {
    const auto read = [this] {
        work_->ask<AlertsHere>(
            this, QStringLiteral("open alerts"),
            [](FleetFile& fleet, const CancelToken&) { return readAlertsHere(fleet); },
            [this](Result<AlertsHere> here) {
                if (!here) return;
                emit alertsCounted(int(here->open));
                postAlerts(here->sends && work_->writable());
            });
    };
    connect(work_.get(), &FleetWork::changedFleet, this, read);
    read();
}

void Workplace::postAlerts(bool wanted) {
    if (!wanted) return post_.reset();
    if (post_) return post_->wake();
    post_ = std::make_unique<AlertPost>(work_->path(), [this](const AlertPost::News& news) {
        QMetaObject::invokeMethod(
            this,
            [this, news] {
                if (!news.trouble.empty()) emit said(tr("Alerts: %1").arg(shown(news.trouble)));
                if (news.raised > 0) work_->noteChange();
            },
            Qt::QueuedConnection);
    });
}

}  // namespace fettle
