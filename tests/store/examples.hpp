/// Invented records: each type once with every optional field empty, and once full.
#pragma once

#include "store/port.hpp"

namespace sparewell::store::test {

/// Supplier "Nordlicht Parts", items "L-1" and "L-2", patients "P-1" and "P-2".
void add_referred(UnitOfWork& work);

template <class Record>
Record bare();
template <class Record>
Record full();

/// A record that differs from full<Record>() in everything but what it is known by.
template <class Record>
Record full_but_changed();

}  // namespace sparewell::store::test
