#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::order_number_test {

TEST_CASE_TEMPLATE("order numbers count up within each year", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  CHECK(work->take_order_number(2026) == "SW-2026-0001");
  CHECK(work->take_order_number(2026) == "SW-2026-0002");
  CHECK(work->take_order_number(2027) == "SW-2027-0001");
  CHECK(work->take_order_number(2026) == "SW-2026-0003");
  work->commit();
  CHECK(store->begin_write(anna)->take_order_number(2026) == "SW-2026-0004");
}

TEST_CASE_TEMPLATE("a number that was not committed is given back", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  CHECK(store->begin_write(anna)->take_order_number(2026) == "SW-2026-0001");
  CHECK(store->begin_write(anna)->take_order_number(2026) == "SW-2026-0001");
}

TEST_CASE_TEMPLATE("a number that an imported order bears is passed over", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  auto line = full<OrderLine>();
  line.order_ref = "SW-2026-0001";
  work->put(line);
  CHECK(work->take_order_number(2026) == "SW-2026-0002");
}

TEST_CASE_TEMPLATE("two programs never get the same number", Engine, SPAREWELL_SHARED_ENGINES) {
  const Engine engine;
  const auto first = engine.open();
  const auto second = engine.open();
  std::vector<std::string> taken;
  for (int i = 0; i < 3; ++i) {
    for (const auto* store : {&first, &second}) {
      const auto work = (*store)->begin_write(anna);
      taken.push_back(work->take_order_number(2026));
      work->commit();
    }
  }
  CHECK(taken == std::vector<std::string>{"SW-2026-0001", "SW-2026-0002", "SW-2026-0003",
                                          "SW-2026-0004", "SW-2026-0005", "SW-2026-0006"});
}

}  // namespace sparewell::store::test::order_number_test
