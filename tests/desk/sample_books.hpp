/// The sample clinic as its import makes it.
#pragma once

#include "desk/clinic_folder.hpp"
#include "store/port.hpp"

namespace sparewell::test {

/// Read once.
inline const Clinic& sample_clinic() {
  static const Clinic clinic = [] {
    const auto store = empty_store();
    import(*store, std::filesystem::path{SPAREWELL_SOURCE_DIR} / "sample-data" / "clinic");
    return as_of(store::load_clinic(*store->read()), import_day());
  }();
  return clinic;
}

}  // namespace sparewell::test
