#include "ui/dialogs/save_file.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QStandardPaths>
#include <set>

#include "core/base/file_name.h"
#include "core/base/file_system.h"
#include "core/store/file_probe.h"
#include "ui/model/words.h"

namespace fettle {

void askWhereToSave(QWidget* parent, const SaveQuestion& question, std::function<void(QString path)> chosen) {
    auto* ask = new QFileDialog(parent, question.title);
    ask->setObjectName(QStringLiteral("saveDialog"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    ask->setNameFilter(question.filter);
    ask->setDefaultSuffix(question.suffix);
    ask->setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    std::set<std::string> none;
    ask->selectFile(shown(fileNameFrom(question.name, none)) + u'.' + question.suffix);
    QObject::connect(ask, &QFileDialog::fileSelected, parent,
                     [chosen = std::move(chosen)](const QString& path) { chosen(path); });
    ask->open();
}

void saveFile(FleetWork& work, QObject* receiver, const QString& path, std::string bytes,
              std::function<void(QString trouble)> done) {
    if (isPartOfFleet(path.toStdString(), work.path()))
        return done(QCoreApplication::translate("SaveFile",
                                                "%1 is the fleet file or a part of it and is left as it is.")
                        .arg(path));
    work.ask<void>(
        receiver, QStringLiteral("save ") + path,
        [bytes = std::move(bytes), to = path.toStdString()](FleetFile&, const CancelToken&) {
            return RealFileSystem().writeSafely(to, bytes);
        },
        [done = std::move(done)](Status written) { done(written ? QString() : sentence(written.error())); });
}

}  // namespace fettle
