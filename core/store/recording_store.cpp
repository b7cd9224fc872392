#include "core/store/recording_store.h"
