// Why: words of functions that belong to no class of Qt's go through tr() as all others do, in the context
// that Qt's lupdate gives them. A class without Q_OBJECT says Q_DECLARE_TR_FUNCTIONS(fettle::Name). Thread:
// any.
#pragma once

#include <QCoreApplication>
#include <QString>

namespace fettle {

inline QString tr(const char* text) {
    return QCoreApplication::translate("fettle", text);
}

}  // namespace fettle
