#include "core/store/trend_store.h"
