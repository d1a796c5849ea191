#include "clinic/words.hpp"

#include <doctest/doctest.h>

#include "clinic/stock.hpp"

namespace words_test {

using namespace sparewell;

TEST_CASE("Every word of a list reads back as itself") {
  for (const auto text : words<EndReason>()) CHECK(word(*parse_word<EndReason>(text)) == text);
  for (const auto text : words<Material>()) CHECK(word(*parse_word<Material>(text)) == text);
  for (const auto text : words<Level>()) CHECK(word(*parse_word<Level>(text)) == text);
}

TEST_CASE("Letter case, hyphens and underscores do not matter") {
  CHECK(parse_word<Material>("Mineral Oil Gel") == Material::mineral_oil_gel);
  CHECK(parse_word<EndReason>("LOST_GRIP") == EndReason::lost_grip);
  CHECK_FALSE(parse_word<Side>("both"));
  CHECK_FALSE(parse_word<Side>(""));
}

TEST_CASE("Only seven endings are wear") {
  int wear = 0;
  for (std::size_t i = 0; i < words<EndReason>().size(); ++i) {
    wear += is_wear(static_cast<EndReason>(i)) ? 1 : 0;
  }
  CHECK(wear == 7);
  CHECK(is_wear(EndReason::worn));
  CHECK_FALSE(is_wear(EndReason::lost));
}

TEST_CASE("A place named for quarantine holds no usable stock") {
  CHECK(is_quarantine("Quarantine shelf"));
  CHECK(is_quarantine("store B - QUARANTINE"));
  CHECK_FALSE(is_quarantine("main store"));
}

}  // namespace words_test
