#include "clinic/in_parallel.hpp"

#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

namespace in_parallel_test {

using namespace sparewell;

TEST_CASE("Each thing is worked on once") {
  for (const std::size_t count : {0u, 1u, 7u, 100000u}) {
    std::vector<int> done(count, 0);
    in_parallel(count, [&](std::size_t i) { ++done[i]; });
    CHECK(done == std::vector<int>(count, 1));
  }
}

TEST_CASE("A failure reaches the caller") {
  CHECK_THROWS_AS(in_parallel(50,
                              [](std::size_t i) {
                                if (i == 17) throw std::runtime_error{"17"};
                              }),
                  std::runtime_error);
}

}  // namespace in_parallel_test
