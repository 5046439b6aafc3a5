/*
 * The one file the library that draws solids enters through, with the one that sets its scenes up
 * from components.
 */
export { Canvas, T, useThrelte } from '@threlte/core';
export {
	BackSide,
	BufferAttribute,
	BufferGeometry,
	Color,
	NoToneMapping,
	OrthographicCamera,
	Plane,
	Raycaster,
	ShapeUtils,
	Spherical,
	SRGBColorSpace,
	Vector2,
	Vector3,
} from 'three';
export { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
export { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
export { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
export { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
