#include "app/desktop/quiet_messages.h"

#include <QString>
#include <QtGlobal>

namespace fettle {

namespace {

QtMessageHandler before = nullptr;

void passOn(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    for (const char* what : {"propagateSizeHints()", "raise()"})
        if (message.startsWith(QLatin1String("This plugin does not support ") + QLatin1String(what))) return;
    if (before) before(type, context, message);
}

}  // namespace

void quietStandIn() {
    before = qInstallMessageHandler(passOn);
}

}  // namespace fettle
