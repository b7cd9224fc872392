#include "core/store/round_store.h"
