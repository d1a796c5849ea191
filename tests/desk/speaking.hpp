/// Another language for the length of a test.
#pragma once

#include "desk/ways.hpp"

namespace sparewell::test {

/// Speaks and writes so while it lives, and the program's own English afterwards.
class Speaking {
 public:
  explicit Speaking(const desk::Ways& ways) { desk::follow(ways, catalogues); }
  ~Speaking() { desk::follow({"en", "", false}, catalogues); }
  Speaking(const Speaking&) = delete;
  Speaking& operator=(const Speaking&) = delete;

 private:
  static constexpr auto catalogues = SPAREWELL_BINARY_DIR "/share/locale";
};

}  // namespace sparewell::test
