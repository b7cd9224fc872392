#include "ui/dialogs/retention_words.h"

#include <QCoreApplication>
#include <QLocale>

namespace fettle {

namespace {
struct Words {
    Q_DECLARE_TR_FUNCTIONS(RetentionWords)
};
}  // namespace

QString kindWord(KeptKind kind) {
    switch (kind) {
        case KeptKind::Waveform:
            return Words::tr("Waveforms");
        case KeptKind::Spectra:
            return Words::tr("Spectra");
        case KeptKind::Examination:
            break;
    }
    return Words::tr("Examinations");
}

QString workWord(const QString& what) {
    for (const KeptKind kind : kAllKept)
        if (what == QLatin1String(keyOf(kind))) return kindWord(kind);
    return what == QLatin1String("free space") ? Words::tr("Free space") : what;
}

QString reasonWord(KeptFor reason) {
    switch (reason) {
        case KeptFor::Young:
            return Words::tr("not old enough yet");
        case KeptFor::Round:
            return Words::tr("a round stands on it");
        case KeptFor::Finding:
            return Words::tr("a finding or an alert stands on it");
        case KeptFor::Baseline:
            return Words::tr("the baseline stands on it");
        case KeptFor::Trial:
            return Words::tr("a trial stands on it");
        case KeptFor::Balance:
            return Words::tr("a balancing stands on it");
        case KeptFor::Job:
            return Words::tr("the verification of a job stands on it");
        case KeptFor::History:
            return Words::tr("next to an event, a report or a job");
        case KeptFor::Request:
            return Words::tr("answers what was asked for");
        case KeptFor::Refusal:
            return Words::tr("something of its file was refused and is not answered");
        case KeptFor::Day:
            return Words::tr("the strongest of its day");
        case KeptFor::Week:
            break;
    }
    return Words::tr("the strongest of its week");
}

QString sizeText(double bytes) {
    return QLocale().formattedDataSize(qint64(bytes), 1, QLocale::DataSizeSIFormat);
}

QString yearWords(const YearEstimate& year) {
    if (!(year.recordings > 0)) return {};
    return Words::tr(
               "A machine's year at the rate of its last 30 days takes about %1: waveforms %2, spectra %3, "
               "examinations %4, for ever %5.")
        .arg(sizeText(year.total()), sizeText(year.bytes[std::size_t(KeptKind::Waveform)]),
             sizeText(year.bytes[std::size_t(KeptKind::Spectra)]),
             sizeText(year.bytes[std::size_t(KeptKind::Examination)]), sizeText(year.foreverBytes));
}

QString spaceWords(const FileSpace& space) {
    const QString bytes = sizeText(double(space.bytes)), free = sizeText(double(space.freeBytes));
    if (space.givesBack) return Words::tr("The file takes %1; %2 of it are free.").arg(bytes, free);
    return Words::tr(
               "The file takes %1; %2 of it are free. It was made before free space could be given back to "
               "the disk bit by bit: compacting does it once.")
        .arg(bytes, free);
}

}  // namespace fettle
