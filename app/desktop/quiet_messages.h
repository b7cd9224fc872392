// Why: without a display Qt's own stand-in for one says that it cannot pass on a window's size hints nor
// raise it, once a window: true, of no use to anybody, and in the way of what does matter on stderr. These
// two sentences alone are dropped; every other message of Qt goes where it would have gone. Thread: any, as
// Qt's handlers.
#pragma once

namespace fettle {

void quietStandIn();  // before the first window

}  // namespace fettle
