#include "clinic/say.hpp"

#include <doctest/doctest.h>

namespace say_test {

using namespace sparewell;

TEST_CASE("English stands in the code and needs no catalogue") {
  CHECK(say("{} is due on {}", "P-1", 3) == "P-1 is due on 3");
  CHECK(say_n("{} part", "{} parts", 1, 1) == "1 part");
  CHECK(say_n("{} part", "{} parts", 0, 0) == "0 parts");
  CHECK(std::string{said("")}.empty());
  CHECK(spoken_language() == "en");
  CHECK_FALSE(speak("xx", "/no/such/folder"));
  CHECK(spoken_language() == "en");
}

TEST_CASE("Numbers with decimals have the reader's decimal sign, whole ones and texts stay") {
  write_decimals_with(',');
  CHECK(say("{:.1f} of {} at {:.{}f} in v1.2", 1.25, 3, 0.5, 2) == "1,2 of 3 at 0,50 in v1.2");
  CHECK(say("{:>6.1f}|{:g}|{}", 2.0, 4.0, "4.5") == "   2,0|4|4.5");
  write_decimals_with('.');
  CHECK(say("{:.1f}", 1.25) == "1.2");
}

}  // namespace say_test
