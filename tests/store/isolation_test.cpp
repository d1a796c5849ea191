#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::isolation_test {

TEST_CASE_TEMPLATE("a snapshot keeps its view while the same store writes", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto before = store->read();
  const auto work = store->begin_write(anna);
  work->put(full<Patient>());
  work->commit();
  CHECK(before->template all<Patient>().empty());
  CHECK(store->read()->template all<Patient>().size() == 1);
}

TEST_CASE_TEMPLATE("a snapshot keeps its view while another program writes", Engine,
                   SPAREWELL_SHARED_ENGINES) {
  const Engine engine;
  const auto reader = engine.open();
  const auto writer = engine.open();
  const auto before = reader->read();
  const auto work = writer->begin_write(anna);
  work->put(full<Patient>());
  CHECK(reader->read()->template all<Patient>().empty());
  work->commit();
  CHECK(before->template all<Patient>().empty());
  CHECK(before->changes(10).empty());
  CHECK(reader->read()->template all<Patient>().size() == 1);
}

TEST_CASE_TEMPLATE("a second writer is told that the clinic is busy, and can try again", Engine,
                   SPAREWELL_SHARED_ENGINES) {
  const Engine engine;
  const auto first = engine.open();
  const auto second = engine.open();
  {
    const auto work = first->begin_write(anna);
    CHECK(error_of([&] { (void)second->begin_write(anna); }) == StoreError::busy);
    work->put(full<Patient>());
    work->commit();
  }
  const auto work = second->begin_write(anna);
  CHECK(work->template all<Patient>().size() == 1);
  work->put(bare<Patient>());
  CHECK_NOTHROW(work->commit());
  CHECK(first->read()->template all<Patient>().size() == 2);
}

TEST_CASE_TEMPLATE("several snapshots of different moments live side by side", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  std::vector<std::unique_ptr<Snapshot>> snapshots;
  for (int i = 0; i < 4; ++i) {
    snapshots.push_back(store->read());
    const auto work = store->begin_write(anna);
    work->put(Patient{.ref = {"S-" + std::to_string(i)}});
    work->commit();
  }
  for (std::size_t i = 0; i < snapshots.size(); ++i) {
    CHECK(snapshots[i]->template all<Patient>().size() == i);
  }
}

}  // namespace sparewell::store::test::isolation_test
