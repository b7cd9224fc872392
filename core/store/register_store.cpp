#include "core/store/register_store.h"
