#include "app/desktop/quiet_messages.h"

#include <QString>
#include <QtGlobal>

namespace fettle {

namespace {

QtMessageHandler before = nullptr;

void passOn(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    if (message.startsWith(QLatin1String("This plugin does not support propagateSizeHints()"))) return;
    if (before) before(type, context, message);
}

}  // namespace

void quietSizeHints() {
    before = qInstallMessageHandler(passOn);
}

}  // namespace fettle
