/// The sample clinic with its books compared, read once.
#pragma once

#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "desk/billing/books.hpp"
#include "desk/clinic_folder.hpp"

namespace sparewell::test {

/// A store of its own for each test that writes; the clinic bills in euro, as in open.sh.
inline std::unique_ptr<store::Store> sample_store() {
  auto store = empty_store();
  {
    const auto work = store->begin_write({"tester", "settings"});
    auto settings = work->settings();
    settings.currency = {"EUR"};
    work->save(settings);
    work->commit();
  }
  (void)import(*store, std::filesystem::path{SPAREWELL_SOURCE_DIR} / "sample-data" / "clinic");
  return store;
}

inline const Clinic& sample_clinic() {
  static const Clinic clinic = as_of(store::load_clinic(*sample_store()->read()), import_day());
  return clinic;
}

inline const desk::Books& sample_books() {
  static const desk::Books books = desk::compare_books(sample_clinic(), import_day());
  return books;
}

}  // namespace sparewell::test
