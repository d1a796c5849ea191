#include "store/sqlite/store.hpp"

#include <stdexcept>
#include <vector>

#include "clinic/say.hpp"
#include "store/sqlite/copy.hpp"
#include "store/sqlite/file_check.hpp"
#include "store/sqlite/migrations.hpp"
#include "store/sqlite/order_numbers.hpp"
#include "store/sqlite/unit_of_work.hpp"
#include "store/sqlite/verify.hpp"

namespace sparewell::store::sqlite {
namespace {

/// The database with what its snapshots and units of work share; they may outlive the Store.
struct Home {
  explicit Home(OpenDatabase open) : database{std::move(open)} {}

  OpenDatabase database;  // first, so that the writer is the last to close
  std::vector<std::unique_ptr<Connection>> idle_readers;
  bool is_writing = false;

  [[nodiscard]] bool in_memory() const { return database.path.empty(); }
};

/// A reader on loan. In memory each snapshot reads a copy of its own.
class Reader {
 public:
  explicit Reader(std::shared_ptr<Home> home) : home_{std::move(home)} {
    if (home_->in_memory()) {
      take_copy();
    } else if (home_->idle_readers.empty()) {
      connection_ = std::make_unique<Connection>(home_->database.path, Use::read,
                                                 home_->database.busy_timeout);
    } else {
      connection_ = std::move(home_->idle_readers.back());
      home_->idle_readers.pop_back();
    }
  }
  ~Reader() {
    if (!home_->in_memory()) home_->idle_readers.push_back(std::move(connection_));
  }
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  [[nodiscard]] Connection& connection() const { return *connection_; }

 private:
  void take_copy() {
    if (home_->is_writing) {
      throw StoreFailure{StoreError::busy,
                         said("A unit of work is open; read inside it, or after it has ended.")};
    }
    connection_ = std::make_unique<Connection>(":memory:", Use::read);
    copy_into(*home_->database.writer, *connection_);
  }

  std::shared_ptr<Home> home_;
  std::unique_ptr<Connection> connection_;
};

class SqliteSnapshot final : public ReadsOfAll<Snapshot>::type {
 public:
  explicit SqliteSnapshot(const std::shared_ptr<Home>& home)
      : reader_{home},
        transaction_{reader_.connection().database(), SQLite::TransactionBehavior::DEFERRED},
        session_{reader_.connection()} {
    // The first read fixes the view; it also sees an upgrade by another program.
    check_version(file_version(reader_.connection()), home->database.version);
  }

 protected:
  [[nodiscard]] Session& session() const override { return session_; }

 private:
  Reader reader_;
  SQLite::Transaction transaction_;
  mutable Session session_;
};

/// Marks the writer as taken while it lives.
class WriterLoan {
 public:
  explicit WriterLoan(std::shared_ptr<Home> home) : home_{std::move(home)} {
    if (home_->is_writing) {
      throw StoreFailure{StoreError::busy,
                         said("A unit of work is open already; finish it before the next one.")};
    }
    home_->is_writing = true;
  }
  ~WriterLoan() { give_back(); }
  WriterLoan(const WriterLoan&) = delete;
  WriterLoan& operator=(const WriterLoan&) = delete;

  [[nodiscard]] Connection& connection() const { return *home_->database.writer; }
  [[nodiscard]] bool is_given_back() const { return given_back_; }
  void give_back() {
    if (!given_back_) home_->is_writing = false;
    given_back_ = true;
  }

 private:
  std::shared_ptr<Home> home_;
  bool given_back_ = false;
};

using UnitOfWorkBase = WritesOfAll<ReadsOfAll<UnitOfWork>::type>::type;

class SqliteUnitOfWork final : public UnitOfWorkBase {
 public:
  SqliteUnitOfWork(const std::shared_ptr<Home>& home, const Author& author)
      : loan_{home},
        transaction_{loan_.connection().database(), SQLite::TransactionBehavior::IMMEDIATE},
        session_{loan_.connection(), author, home->database.clock} {
    check_version(file_version(loan_.connection()), home->database.version);
  }

  void save(const ClinicSettings& settings) override {
    translated([&] { write_settings(writing(), settings); }, {to_say("setting"), to_say("key")});
  }
  void record(const StockMovement& movement) override {
    translated([&] { append_movement(writing(), movement); }, Table<StockMovement>::subject);
  }
  void mark_reversed(RowId booking) override {
    translated([&] { note_reversal(writing(), booking); }, {to_say("reversal"), to_say("booking")});
  }
  void record_count(const ShelfCountRecord& count) override {
    translated([&] { append_count(writing(), count); }, Table<ShelfCountRecord>::subject);
  }
  std::string take_order_number(int year) override {
    return translated([&] { return next_order_number(writing(), year); },
                      {to_say("order number"), ""});
  }
  void commit() override {
    (void)writing();
    translated([&] { transaction_.commit(); });
    loan_.give_back();
  }

 protected:
  [[nodiscard]] Session& session() const override { return open_session(); }
  [[nodiscard]] WriteSession& writing() override { return open_session(); }

 private:
  [[nodiscard]] WriteSession& open_session() const {
    if (loan_.is_given_back()) {
      throw std::logic_error{"a unit of work was used after its commit"};
    }
    // Without a transaction each further write would stand alone.
    if (!loan_.connection().in_transaction()) {
      throw StoreFailure{
          StoreError::connection_lost,
          said("The changes were undone after an earlier failure; make them again.")};
    }
    return session_;
  }

  WriterLoan loan_;
  SQLite::Transaction transaction_;
  mutable WriteSession session_;
};

class SqliteStore final : public Store {
 public:
  explicit SqliteStore(OpenDatabase database)
      : home_{std::make_shared<Home>(std::move(database))} {}

  [[nodiscard]] std::unique_ptr<Snapshot> read() override {
    return translated([&] { return std::make_unique<SqliteSnapshot>(home_); });
  }
  [[nodiscard]] std::unique_ptr<UnitOfWork> begin_write(const Author& author) override {
    return translated([&] { return std::make_unique<SqliteUnitOfWork>(home_, author); });
  }
  [[nodiscard]] std::vector<std::string> verify() override {
    return translated([&] {
      const Reader reader{home_};
      const SQLite::Transaction transaction{reader.connection().database()};
      Session session{reader.connection()};
      return find_damage(session);
    });
  }
  void copy_to(const std::string& path) override {
    translated([&] {
      const Reader reader{home_};
      copy_database(reader.connection(), path, Existing::replace_clinic_file);
    });
  }

 private:
  std::shared_ptr<Home> home_;
};

}  // namespace

std::unique_ptr<Store> make_store(OpenDatabase database) {
  return std::make_unique<SqliteStore>(std::move(database));
}

}  // namespace sparewell::store::sqlite
