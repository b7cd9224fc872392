#include "ui/dialogs/preview_models.h"

#include "ui/model/machine_document.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

QString joinedChannels(const FilePreview& file) {
    QStringList names;
    for (const PreviewChannel& channel : file.channels) {
        const QString unit = shown(channel.unit.value);
        names << (unit.isEmpty() ? shown(channel.name.value)
                                 : QStringLiteral("%1 [%2]").arg(shown(channel.name.value), unit));
    }
    return names.join(QStringLiteral(", "));
}

}  // namespace

QString stateWord(FilePreview::State state) {
    switch (state) {
        case FilePreview::State::Ready:
            return PreviewGroupModel::tr("ready");
        case FilePreview::State::Known:
            return PreviewGroupModel::tr("already in");
        case FilePreview::State::Parked:
            return PreviewGroupModel::tr("would be parked");
        case FilePreview::State::Refused:
            break;
    }
    return PreviewGroupModel::tr("would be refused");
}

QString fromWord(FactFrom from) {
    switch (from) {
        case FactFrom::File:
            return PreviewFactModel::tr("file");
        case FactFrom::Sidecar:
            return PreviewFactModel::tr("sidecar");
        case FactFrom::Rule:
            return PreviewFactModel::tr("rule");
        case FactFrom::Register:
            return PreviewFactModel::tr("register");
        case FactFrom::Nobody:
            break;
    }
    return PreviewFactModel::tr("nobody says");
}

void PreviewGroupModel::set(PreviewPtr preview) {
    beginResetModel();
    preview_ = std::move(preview);
    endResetModel();
}

const PreviewGroup* PreviewGroupModel::group(int row) const {
    return preview_ && row >= 0 && row < rowCount() ? &preview_->groups[std::size_t(row)] : nullptr;
}

const FilePreview* PreviewGroupModel::first(int row) const {
    const PreviewGroup* of = group(row);
    return of ? &preview_->files[of->files[0]] : nullptr;
}

int PreviewGroupModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !preview_ ? 0 : int(preview_->groups.size());
}

int PreviewGroupModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QVariant PreviewGroupModel::data(const QModelIndex& index, int role) const {
    const FilePreview* file = first(index.row());
    if (!file || (role != Qt::DisplayRole && role != Qt::ToolTipRole)) return {};
    switch (index.column()) {
        case Files: {
            const QString name = shown(fileNameOf(file->path));
            const auto more = group(index.row())->files.size() - 1;
            return more == 0 ? name : tr("%1 and %2 like it").arg(name, QString::number(more));
        }
        case State:
            return stateWord(file->state);
        case Format:
            return shown(file->dialect.empty() || role != Qt::ToolTipRole ? file->format : file->dialect);
        case Rate:
            return file->rateHz > 0 ? tr("%1 Hz, %2 s").arg(file->rateHz).arg(numberText(file->seconds))
                                    : QString();
        case Channels:
            return joinedChannels(*file);
        case Machine:
            return shown(file->machine.value);
        case Why:
            return shown(file->objection.place.empty() ? file->objection.rule
                                                       : file->objection.place + ": " + file->objection.rule);
    }
    return {};
}

QVariant PreviewGroupModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= Columns) return {};
    static const char* const names[] = {
        QT_TR_NOOP("Files"),    QT_TR_NOOP("State"),   QT_TR_NOOP("Format"),           QT_TR_NOOP("Rate"),
        QT_TR_NOOP("Channels"), QT_TR_NOOP("Machine"), QT_TR_NOOP("What keeps it out")};
    if (role == Qt::DisplayRole) return tr(names[section]);
    if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

// `bare`: what the file has where nobody said anything: a channel's number for a name, a scale of 1.
void PreviewFactModel::add(const QString& what, const Fact& fact, const char* key, bool number, int channel,
                           bool bare) {
    Row row{what, fact, key, channel, number, false, {}};
    const bool said = fact.from == FactFrom::File || fact.from == FactFrom::Sidecar;
    row.open = *key && (!said || (bare && fact.from == FactFrom::File));
    rows_.push_back(std::move(row));
}

void PreviewFactModel::set(const FilePreview* file) {
    beginResetModel();
    rows_.clear();
    channels_ = file ? file->channels.size() : 0;
    if (file && !file->format.empty()) {
        add(tr("Machine"), file->machine, "machine");
        add(tr("Point"), file->point, "point");
        add(tr("Time, UTC"), file->time, "");
        add(tr("Speed, r/min"), file->speedRpm, "speed_rpm", true);
        for (std::size_t c = 0; c < channels_; ++c) {
            const PreviewChannel& channel = file->channels[c];
            const int i = int(c);
            const bool bare = channel.unit.value.empty() || channel.unit.from == FactFrom::Rule ||
                              channel.unit.from == FactFrom::Register;
            add(tr("Channel %1").arg(i + 1), channel.name, "name", false, i,
                channel.name.value == std::to_string(c + 1));
            add(tr("   quantity"), channel.quantity, "", false, i);
            add(tr("   unit"), channel.unit, "unit", false, i);
            add(tr("   scale"), channel.scale, "scale", true, i, bare && channel.scale.value == "1");
            add(tr("   direction"), channel.direction, "", false, i);
            add(tr("   point"), channel.point, "point", false, i);
        }
    }
    endResetModel();
}

bool PreviewFactModel::typed() const {
    for (const Row& row : rows_)
        if (!row.typed.isEmpty()) return true;
    return false;
}

Json PreviewFactModel::typedKeys() const {
    Json keys = Json::object(), channels = Json::array();
    bool some = false;
    for (std::size_t c = 0; c < channels_; ++c)
        channels.push_back(Json::object());
    for (const Row& row : rows_) {
        if (row.typed.isEmpty()) continue;
        const Json value = valueOf(row.typed, row.number ? FieldKind::Number : FieldKind::Text);
        if (row.channel < 0) {
            keys[row.key] = value;
        } else {
            channels[std::size_t(row.channel)][row.key] = value;
            some = true;
        }
    }
    if (some) keys["channels"] = std::move(channels);
    return keys;
}

int PreviewFactModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(rows_.size());
}

int PreviewFactModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QVariant PreviewFactModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const Row& row = rows_[std::size_t(index.row())];
    const bool typed = !row.typed.isEmpty();
    if (role == Qt::ToolTipRole) {
        if (row.open) return tr("Can be typed; kept as a rule it holds for all files of the pattern.");
        return row.key.empty() ? QString()
                               : tr("%1 says so; a rule does not change it.").arg(fromWord(row.fact.from));
    }
    if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
    if (index.column() == What) return row.what;
    if (index.column() == Value) return typed ? row.typed : shown(row.fact.value);
    return typed ? tr("typed, not kept yet") : fromWord(row.fact.from);
}

bool PreviewFactModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole || index.column() != Value) return false;
    Row& row = rows_[std::size_t(index.row())];
    const QString text = value.toString().trimmed();
    if (!row.open) return false;
    row.typed = text == shown(row.fact.value) ? QString() : text;
    emit dataChanged(this->index(index.row(), 0), this->index(index.row(), Columns - 1));
    return true;
}

QVariant PreviewFactModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= Columns) return {};
    static const char* const names[] = {QT_TR_NOOP("Fact"), QT_TR_NOOP("Value"), QT_TR_NOOP("From")};
    if (role == Qt::DisplayRole) return tr(names[section]);
    if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

Qt::ItemFlags PreviewFactModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    const auto base = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    const bool open = index.column() == Value && rows_[std::size_t(index.row())].open;
    return open ? base | Qt::ItemIsEditable : base;
}

}  // namespace fettle
