// Why: what files were taken for as tables: the kinds of files, and the facts of one file with where each
// came from. Facts that neither the file nor its sidecar says can be typed; what was typed becomes the keys
// of a rule. Thread: the window's.
#pragma once

#include <QAbstractTableModel>
#include <memory>

#include "core/intake/preview.h"

namespace fettle {

using PreviewPtr = std::shared_ptr<const Preview>;

QString stateWord(FilePreview::State state);
QString fromWord(FactFrom from);

class PreviewGroupModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Files, State, Format, Rate, Channels, Machine, Why, Columns };
    using QAbstractTableModel::QAbstractTableModel;

    void set(PreviewPtr preview);
    const PreviewGroup* group(int row) const;  // null: there is none
    const FilePreview* first(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    PreviewPtr preview_;
};

class PreviewFactModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { What, Value, From, Columns };
    using QAbstractTableModel::QAbstractTableModel;

    void set(const FilePreview* file);  // null: nothing
    Json typedKeys() const;             // of a rule; empty object: nothing was typed
    bool typed() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    struct Row {
        QString what;
        Fact fact;
        std::string key;   // of a sidecar; empty: not to be typed
        int channel = -1;  // -1: of the whole file
        bool number = false, open = false;
        QString typed;
    };
    void add(const QString& what, const Fact& fact, const char* key, bool number = false, int channel = -1,
             bool bare = false);

    std::vector<Row> rows_;
    std::size_t channels_ = 0;
};

}  // namespace fettle
