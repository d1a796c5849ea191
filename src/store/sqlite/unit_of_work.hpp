/// The writing half of the port.
#pragma once

#include <SQLiteCpp/Transaction.h>

#include "store/sqlite/snapshot.hpp"

namespace sparewell::store::sqlite {

/// `Base` with the overloads that it inherits from many classes under one name.
template <class Base, class... Records>
class WithWrites : public Base {
 public:
  using Writes<Records>::add...;
  using Writes<Records>::replace...;
};

/// `Base` with the writing of one record type more at each level.
template <class Base, class... Records>
class WritesOf;

template <class Base>
class WritesOf<Base> : public Base {
 protected:
  /// Throws when the unit of work has ended.
  [[nodiscard]] virtual WriteSession& writing() = 0;
};

template <class Base, class First, class... Rest>
class WritesOf<Base, First, Rest...> : public WritesOf<Base, Rest...> {
 public:
  using WritesOf<Base, Rest...>::add;
  using WritesOf<Base, Rest...>::replace;

  RowId add(const First& record) override {
    return write_record([&](WriteSession& session) { return add_record(session, record); });
  }
  void replace(RowId id, const First& record) override {
    write_record([&](WriteSession& session) {
      replace_record(session, id, record);
      return id;
    });
  }

 private:
  template <class Write>
  RowId write_record(Write write) {
    auto& session = this->writing();
    return translated(
        [&] {
          if constexpr (!has_lists<First>) return write(session);
          return all_or_nothing(session, [&] { return write(session); });
        },
        Table<First>::subject);
  }
};

template <class Base, class Access = AccessToRecords<Writes>>
struct WritesOfAll;
template <class Base, class... Records>
struct WritesOfAll<Base, AccessTo<Writes, Records...>> {
  using type = WritesOf<WithWrites<Base, Records...>, Records...>;
};

}  // namespace sparewell::store::sqlite
