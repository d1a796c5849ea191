/// Who is newly affected by what an import brought: parts against sensitivities.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/examination.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

class NewlyAgainst {
 public:
  /// Before the import. A clinic that knows no patient yet is not examined.
  NewlyAgainst(store::Store& store, Date today);

  /// After it: a sentence that names the first of those who are newly affected; none when nobody
  /// is.
  [[nodiscard]] std::optional<std::string> words() const;

 private:
  store::Store& store_;
  Date today_;
  bool examined_ = false;
  std::vector<care::Examined> before_;
};

}  // namespace sparewell::desk
