// Over 250 lines: one pass over a class file, in one file so that the build can compile it alone.
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * Links at build time what Java would link at each start: lambdas and method references become
 * small classes, and {@code equals} and {@code hashCode} of records become plain code that gives
 * the same. Linking them costs a sixth of a short run. A form that is not known here is left alone,
 * and Java links it as ever. Running it again changes nothing.
 *
 * <pre>java -cp asm.jar:asm-tree.jar LinkAhead.java target/classes</pre>
 */
public final class LinkAhead {
  private static final String FACTORY = "java/lang/invoke/LambdaMetafactory";
  private static final String RECORDS = "java/lang/runtime/ObjectMethods";
  private static final String OBJECT = "java/lang/Object";

  /** Between the name of a class and the number of a lambda in it. */
  private static final String LAMBDA = "$$L";

  private static final String MAKE = "make";
  private static final String ONLY = "ONLY";

  private final Map<String, ClassNode> classes = new TreeMap<>();
  private final Map<String, byte[]> made = new TreeMap<>();
  private final Set<String> linked = new HashSet<>();
  private int left;

  private LinkAhead() {}

  /** A conversion that the language allows and that is not known here. */
  private static final class Unknown extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /**
   * Rewrites the classes of a folder in place.
   *
   * @param args the folder
   */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args[0]);
    LinkAhead ahead = new LinkAhead();
    List<Path> files;
    try (Stream<Path> all = Files.walk(root)) {
      files = all.filter(f -> f.toString().endsWith(".class")).sorted().toList();
    }
    for (Path file : files) {
      ClassNode node = new ClassNode();
      new ClassReader(Files.readAllBytes(file)).accept(node, 0);
      ahead.classes.put(node.name, node);
    }
    ahead.classes.values().stream().filter(ahead::link).toList().forEach(n -> ahead.write(n, root));
    for (Path file : files) {
      if (ahead.isLeftOver(root.relativize(file).toString().replace('\\', '/'))) {
        Files.delete(file);
      }
    }
    for (Map.Entry<String, byte[]> entry : ahead.made.entrySet()) {
      Files.write(root.resolve(entry.getKey() + ".class"), entry.getValue());
    }
    System.out.println(
        ahead.made.size() + " lambdas linked ahead, " + ahead.left + " left to link at run time");
  }

  /** True for a class made before of a lambda that is no longer there. */
  private boolean isLeftOver(String file) {
    String name = file.substring(0, file.length() - ".class".length());
    int mark = name.indexOf(LAMBDA);
    return mark > 0 && linked.contains(name.substring(0, mark)) && !made.containsKey(name);
  }

  private void write(ClassNode node, Path root) {
    // a nest is told by its host, which may have had nothing to link itself
    for (ClassNode each : List.of(node, hostOf(node))) {
      ClassWriter writer = new ClassWriter(0);
      each.accept(writer);
      try {
        Files.write(root.resolve(each.name + ".class"), writer.toByteArray());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private ClassNode hostOf(ClassNode node) {
    return node.nestHostClass == null ? node : classes.get(node.nestHostClass);
  }

  /** True if something was linked in it. */
  private boolean link(ClassNode node) {
    boolean changed = false;
    int number = 0;
    for (MethodNode method : List.copyOf(node.methods)) {
      for (AbstractInsnNode step : method.instructions.toArray()) {
        if (step instanceof InvokeDynamicInsnNode call) {
          AbstractInsnNode instead = null;
          if (call.bsm.getOwner().equals(FACTORY) && call.bsm.getName().equals("metafactory")) {
            instead = lambda(node, call, node.name + LAMBDA + number);
            number += instead == null ? 0 : 1;
          } else if (call.bsm.getOwner().equals(RECORDS) && !call.name.equals("toString")) {
            instead = ofRecord(node, call);
          }
          if (instead == null) {
            left++;
          } else {
            method.instructions.set(step, instead);
            changed = true;
          }
        }
      }
    }
    if (changed) {
      linked.add(node.name);
    }
    return changed;
  }

  private AbstractInsnNode lambda(ClassNode node, InvokeDynamicInsnNode call, String name) {
    try {
      made.put(name, new Lambda(call, name, hostOf(node).name).bytes());
    } catch (Unknown e) {
      return null;
    }
    ClassNode host = hostOf(node);
    if (host.nestMembers == null) {
      host.nestMembers = new ArrayList<>();
    }
    if (!host.nestMembers.contains(name)) {
      host.nestMembers.add(name);
    }
    Type site = Type.getMethodType(call.desc);
    return site.getArgumentCount() == 0
        ? new FieldInsnNode(Opcodes.GETSTATIC, name, ONLY, site.getReturnType().getDescriptor())
        : new MethodInsnNode(Opcodes.INVOKESTATIC, name, MAKE, call.desc, false);
  }

  /** One lambda as a class: what it captures are fields, what it does is one call. */
  private static final class Lambda {
    private final String name;
    private final String host;
    private final String method;
    private final Type site;
    private final Type erased;
    private final Handle target;
    private final Type asked;
    private final ClassWriter out = new ClassWriter(ClassWriter.COMPUTE_MAXS);

    Lambda(InvokeDynamicInsnNode call, String name, String host) {
      this.name = name;
      this.host = host;
      this.method = call.name;
      this.site = Type.getMethodType(call.desc);
      this.erased = (Type) call.bsmArgs[0];
      this.target = (Handle) call.bsmArgs[1];
      this.asked = (Type) call.bsmArgs[2];
    }

    byte[] bytes() {
      Type face = site.getReturnType();
      out.visit(
          Opcodes.V17,
          Opcodes.ACC_FINAL | Opcodes.ACC_SUPER | Opcodes.ACC_SYNTHETIC,
          name,
          null,
          OBJECT,
          new String[] {face.getInternalName()});
      out.visitNestHost(host);
      constructor();
      if (site.getArgumentCount() == 0) {
        only(face);
      } else {
        make();
      }
      run();
      out.visitEnd();
      return out.toByteArray();
    }

    private String captures() {
      return Type.getMethodDescriptor(Type.VOID_TYPE, site.getArgumentTypes());
    }

    private void constructor() {
      MethodVisitor to = begin(Opcodes.ACC_PRIVATE, "<init>", captures());
      to.visitVarInsn(Opcodes.ALOAD, 0);
      to.visitMethodInsn(Opcodes.INVOKESPECIAL, OBJECT, "<init>", "()V", false);
      int local = 1;
      int number = 0;
      for (Type type : site.getArgumentTypes()) {
        String field = "a" + number++;
        out.visitField(
            Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL, field, type.getDescriptor(), null, null);
        to.visitVarInsn(Opcodes.ALOAD, 0);
        to.visitVarInsn(type.getOpcode(Opcodes.ILOAD), local);
        to.visitFieldInsn(Opcodes.PUTFIELD, name, field, type.getDescriptor());
        local += type.getSize();
      }
      end(to, Type.VOID_TYPE);
    }

    private void only(Type face) {
      out.visitField(
          Opcodes.ACC_STATIC | Opcodes.ACC_FINAL, ONLY, face.getDescriptor(), null, null);
      MethodVisitor to = begin(Opcodes.ACC_STATIC, "<clinit>", "()V");
      to.visitTypeInsn(Opcodes.NEW, name);
      to.visitInsn(Opcodes.DUP);
      to.visitMethodInsn(Opcodes.INVOKESPECIAL, name, "<init>", captures(), false);
      to.visitFieldInsn(Opcodes.PUTSTATIC, name, ONLY, face.getDescriptor());
      end(to, Type.VOID_TYPE);
    }

    private void make() {
      MethodVisitor to = begin(Opcodes.ACC_STATIC, MAKE, site.getDescriptor());
      to.visitTypeInsn(Opcodes.NEW, name);
      to.visitInsn(Opcodes.DUP);
      int local = 0;
      for (Type type : site.getArgumentTypes()) {
        to.visitVarInsn(type.getOpcode(Opcodes.ILOAD), local);
        local += type.getSize();
      }
      to.visitMethodInsn(Opcodes.INVOKESPECIAL, name, "<init>", captures(), false);
      end(to, site.getReturnType());
    }

    private void run() {
      MethodVisitor to = begin(Opcodes.ACC_PUBLIC, method, erased.getDescriptor());
      boolean creates = target.getTag() == Opcodes.H_NEWINVOKESPECIAL;
      boolean ofObject = !creates && target.getTag() != Opcodes.H_INVOKESTATIC;
      Type signature = Type.getMethodType(target.getDesc());
      List<Type> wanted = new ArrayList<>();
      if (ofObject) {
        wanted.add(Type.getObjectType(target.getOwner()));
      }
      wanted.addAll(List.of(signature.getArgumentTypes()));
      if (creates) {
        to.visitTypeInsn(Opcodes.NEW, target.getOwner());
        to.visitInsn(Opcodes.DUP);
      }
      int given = 0;
      for (Type type : site.getArgumentTypes()) {
        to.visitVarInsn(Opcodes.ALOAD, 0);
        to.visitFieldInsn(Opcodes.GETFIELD, name, "a" + given, type.getDescriptor());
        pass(to, type, wanted.get(given++));
      }
      int local = 1;
      for (int i = 0; i < erased.getArgumentCount(); i++) {
        Type type = erased.getArgumentTypes()[i];
        to.visitVarInsn(type.getOpcode(Opcodes.ILOAD), local);
        local += type.getSize();
        Type known = asked.getArgumentTypes()[i];
        convert(to, type, known);
        pass(to, known, wanted.get(given++));
      }
      to.visitMethodInsn(
          opcode(), target.getOwner(), target.getName(), target.getDesc(), target.isInterface());
      Type result = creates ? Type.getObjectType(target.getOwner()) : signature.getReturnType();
      convert(to, result, erased.getReturnType());
      end(to, erased.getReturnType());
    }

    private int opcode() {
      return switch (target.getTag()) {
        case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
        case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
        // a private method of the nest is called as any other
        default -> target.isInterface() ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
      };
    }

    private MethodVisitor begin(int access, String called, String descriptor) {
      MethodVisitor to = out.visitMethod(access, called, descriptor, null, null);
      to.visitCode();
      return to;
    }

    private static void end(MethodVisitor to, Type result) {
      to.visitInsn(result.getOpcode(Opcodes.IRETURN));
      to.visitMaxs(0, 0);
      to.visitEnd();
    }
  }

  private static boolean isPrimitive(Type type) {
    return type.getSort() != Type.OBJECT && type.getSort() != Type.ARRAY;
  }

  /** An argument, which the compiler has seen fits: only numbers are still converted. */
  private static void pass(MethodVisitor to, Type from, Type wanted) {
    if (isPrimitive(from) || isPrimitive(wanted)) {
      convert(to, from, wanted);
    }
  }

  /** What is on the stack as another type, by the conversions of an assignment. */
  private static void convert(MethodVisitor to, Type from, Type wanted) {
    if (from.equals(wanted)) {
      return;
    }
    if (wanted.getSort() == Type.VOID) {
      to.visitInsn(from.getSize() == 2 ? Opcodes.POP2 : Opcodes.POP);
    } else if (from.getSort() == Type.VOID) {
      throw new Unknown();
    } else if (isPrimitive(from) && isPrimitive(wanted)) {
      widen(to, from, wanted);
    } else if (isPrimitive(from)) {
      String box = box(from);
      to.visitMethodInsn(
          Opcodes.INVOKESTATIC,
          box,
          "valueOf",
          Type.getMethodDescriptor(Type.getObjectType(box), from),
          false);
    } else if (isPrimitive(wanted)) {
      Type boxed = unboxed(from);
      Type primitive = boxed == null ? wanted : boxed;
      String box = box(primitive);
      if (!from.getInternalName().equals(box)) {
        to.visitTypeInsn(Opcodes.CHECKCAST, box);
      }
      to.visitMethodInsn(
          Opcodes.INVOKEVIRTUAL,
          box,
          primitive.getClassName() + "Value",
          Type.getMethodDescriptor(primitive),
          false);
      widen(to, primitive, wanted);
    } else if (!wanted.getInternalName().equals(OBJECT)) {
      to.visitTypeInsn(Opcodes.CHECKCAST, wanted.getInternalName());
    }
  }

  private static void widen(MethodVisitor to, Type from, Type wanted) {
    if (from.equals(wanted)) {
      return;
    }
    to.visitInsn(
        switch (from.getDescriptor() + wanted.getDescriptor()) {
          case "IJ" -> Opcodes.I2L;
          case "IF" -> Opcodes.I2F;
          case "ID" -> Opcodes.I2D;
          case "JF" -> Opcodes.L2F;
          case "JD" -> Opcodes.L2D;
          case "FD" -> Opcodes.F2D;
          default -> throw new Unknown();
        });
  }

  private static String box(Type primitive) {
    return switch (primitive.getSort()) {
      case Type.BOOLEAN -> "java/lang/Boolean";
      case Type.CHAR -> "java/lang/Character";
      case Type.BYTE -> "java/lang/Byte";
      case Type.SHORT -> "java/lang/Short";
      case Type.INT -> "java/lang/Integer";
      case Type.LONG -> "java/lang/Long";
      case Type.FLOAT -> "java/lang/Float";
      case Type.DOUBLE -> "java/lang/Double";
      default -> throw new Unknown();
    };
  }

  private static Type unboxed(Type box) {
    for (Type primitive :
        List.of(
            Type.BOOLEAN_TYPE,
            Type.CHAR_TYPE,
            Type.BYTE_TYPE,
            Type.SHORT_TYPE,
            Type.INT_TYPE,
            Type.LONG_TYPE,
            Type.FLOAT_TYPE,
            Type.DOUBLE_TYPE)) {
      if (box.getInternalName().equals(box(primitive))) {
        return primitive;
      }
    }
    return null;
  }

  /** The call that a record's {@code equals} or {@code hashCode} becomes. */
  private static AbstractInsnNode ofRecord(ClassNode node, InvokeDynamicInsnNode call) {
    boolean equals = call.name.equals("equals");
    String name = equals ? "$equals" : "$hashCode";
    String descriptor = "(L" + node.name + (equals ? ";Ljava/lang/Object;)Z" : ";)I");
    MethodNode method =
        new MethodNode(
            Opcodes.ACC_PRIVATE | Opcodes.ACC_STATIC | Opcodes.ACC_SYNTHETIC,
            name,
            descriptor,
            null,
            null);
    method.visitCode();
    if (equals) {
      equalsOf(method, node.name, call.bsmArgs);
    } else {
      hashCodeOf(method, node.name, call.bsmArgs);
    }
    method.visitMaxs(4, 3);
    method.visitEnd();
    node.methods.add(method);
    boolean face = (node.access & Opcodes.ACC_INTERFACE) != 0;
    return new MethodInsnNode(Opcodes.INVOKESTATIC, node.name, name, descriptor, face);
  }

  /** Fields from the third argument on; numbers compare as their boxes do. */
  private static void equalsOf(MethodVisitor to, String owner, Object[] parts) {
    Label differ = new Label();
    to.visitVarInsn(Opcodes.ALOAD, 1);
    to.visitTypeInsn(Opcodes.INSTANCEOF, owner);
    to.visitJumpInsn(Opcodes.IFEQ, differ);
    to.visitVarInsn(Opcodes.ALOAD, 1);
    to.visitTypeInsn(Opcodes.CHECKCAST, owner);
    to.visitVarInsn(Opcodes.ASTORE, 2);
    for (int i = 2; i < parts.length; i++) {
      Handle field = (Handle) parts[i];
      Type type = Type.getType(field.getDesc());
      for (int local : new int[] {0, 2}) {
        to.visitVarInsn(Opcodes.ALOAD, local);
        to.visitFieldInsn(Opcodes.GETFIELD, owner, field.getName(), field.getDesc());
      }
      if (!isPrimitive(type)) {
        to.visitMethodInsn(
            Opcodes.INVOKESTATIC,
            "java/util/Objects",
            "equals",
            "(Ljava/lang/Object;Ljava/lang/Object;)Z",
            false);
        to.visitJumpInsn(Opcodes.IFEQ, differ);
      } else {
        to.visitMethodInsn(
            Opcodes.INVOKESTATIC,
            box(type),
            "compare",
            Type.getMethodDescriptor(Type.INT_TYPE, type, type),
            false);
        to.visitJumpInsn(Opcodes.IFNE, differ);
      }
    }
    to.visitInsn(Opcodes.ICONST_1);
    to.visitInsn(Opcodes.IRETURN);
    to.visitLabel(differ);
    to.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
    to.visitInsn(Opcodes.ICONST_0);
    to.visitInsn(Opcodes.IRETURN);
  }

  /** 31 times what came before plus the next, as Java's own does, so that orders stay the same. */
  private static void hashCodeOf(MethodVisitor to, String owner, Object[] parts) {
    to.visitInsn(Opcodes.ICONST_0);
    for (int i = 2; i < parts.length; i++) {
      Handle field = (Handle) parts[i];
      Type type = Type.getType(field.getDesc());
      to.visitIntInsn(Opcodes.BIPUSH, 31);
      to.visitInsn(Opcodes.IMUL);
      to.visitVarInsn(Opcodes.ALOAD, 0);
      to.visitFieldInsn(Opcodes.GETFIELD, owner, field.getName(), field.getDesc());
      if (isPrimitive(type)) {
        to.visitMethodInsn(
            Opcodes.INVOKESTATIC,
            box(type),
            "hashCode",
            Type.getMethodDescriptor(Type.INT_TYPE, type),
            false);
      } else {
        to.visitMethodInsn(
            Opcodes.INVOKESTATIC, "java/util/Objects", "hashCode", "(Ljava/lang/Object;)I", false);
      }
      to.visitInsn(Opcodes.IADD);
    }
    to.visitInsn(Opcodes.IRETURN);
  }
}
