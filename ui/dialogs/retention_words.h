// Why: what retention lists, in the words and numbers of the reader's language. Thread: the window's.
#pragma once

#include <QString>

#include "core/fleet/retention.h"

namespace fettle {

QString kindWord(KeptKind kind);        // "Waveforms"
QString workWord(const QString& what);  // a Progress's "examinations", "free space"; a tag stays as it is
QString reasonWord(KeptFor reason);     // "the strongest of its day"
QString sizeText(double bytes);         // "1.5 MB"
QString yearWords(const YearEstimate& year);
QString spaceWords(const FileSpace& space);

}  // namespace fettle
