#include "batch/json.hpp"

#include <iostream>

namespace sparewell::batch {

void print(const Json& document) {
  // Text that is not UTF-8 cannot come out of the store, but must not stop a report either.
  std::cout << document.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

}  // namespace sparewell::batch
