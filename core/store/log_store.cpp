#include "core/store/log_store.h"
